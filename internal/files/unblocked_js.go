package files

// Unblocked is no mode where there are neither pipes nor devices.
const Unblocked = 0
