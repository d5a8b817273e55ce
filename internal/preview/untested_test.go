package preview

// What is not tried here, and why.
//
//   - Other systems' ways to watch and save (a folder of many files where every file takes a
//     descriptor, files locked while they are written, device names, contents swapped in
//     place): the tests run where they run, and all of them pass with events switched off,
//     which is all that the preview relies on anywhere.
//   - Network and container mounts that give no events: stand in for by the same.
//   - A night's sleep and streams idle for hours: stand in for by a page without a network,
//     by beats, and by there being no limit on how long an answer may take as a whole.
//   - Listening on other addresses, files beside the layout that are served: there is no such
//     thing in the preview, hence no check of it. Photos beside the layout are read by package
//     photos, which looks into no other folder, and never sent.
//   - Where a browser puts a file that is saved: that is the browser's, and the tests see only
//     that it is handed over under its name.
//   - Output beside the layout that would set off the watcher: nothing is ever written.
//   - A stack that overflows cannot be caught: layouts are read line by line, with nothing
//     that calls itself.
//   - A second control-C: the command gives the signal back to the system after the first.
//   - Programs in between that hold streams back: the headers that forbid it are checked.
