package cutting

// Cautions are what is customarily said to those who cut and press. The facts are those of the trade's own cautions (quilt
// guilds' and shops' pages on rotary cutters, classroom rules for irons); the words are ours.
func Cautions() []string {
	return []string{
		"Rotary cutter: close the guard after every cut, each single time, and never lay the cutter down or hand it on open.",
		"Stand to cut, with shoes on, at a flat mat; cut away from yourself, and keep the fingers on the ruler well back from its edge.",
		"Change a dull blade, since it asks for force and slips; wrap old blades in tape before they go into the bin. Do not cut when you are tired, and keep cutters where no child can reach them.",
		"Iron: stand it on its heel, keep face and fingers out of the steam, and pull the plug before you fill it and when you are done. Keep its cord off the cutting mat, and do not press over pins.",
		"Starch: let it soak in before you press, air the room, and keep spray cans away from flames and heat.",
	}
}

// Advice is what should be done before all cloth is cut.
func Advice() []string {
	return []string{
		"Cut and sew one test block first, and measure it, before you cut the rest: a seam that is a thread too wide shows itself there, and not in a whole quilt.",
		"Square the end of the cloth, then cut strips from selvage to selvage, the widest first; the ends of wide strips are used up for smaller pieces.",
	}
}
