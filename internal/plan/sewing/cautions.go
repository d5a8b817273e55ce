package sewing

// cautions are what is usually said where irons, machines and pins are at work.
func cautions() []string {
	return []string{
		"A hot iron burns: take it by its handle alone, keep face and fingers out of the steam, and stand it on its heel whenever you let go of it.",
		"Lay the iron's cord where nobody pulls it down, and away from the cutter and its mat; fill the iron only when it is off, unplugged and cool.",
		"One at a time at the ironing board; keep children and animals away from it, and pull the plug before you leave the room.",
		"Never press over pins. Take them out before the needle reaches them, and count them back into their box.",
		"Stop the machine before you reach near its needle, and take your foot off the pedal when you thread it.",
		"Spray starch only away from flame and from anything that glows, let it soak in before you press, and open a window.",
	}
}
