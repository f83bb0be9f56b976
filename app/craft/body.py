"""Measures of a body a garment is fitted to: their names, and how each is taken."""

MEASURES: dict[str, str] = {
    "chest": "around the fullest part, the tape level",
    "waist": "around the narrowest part",
    "hips": "around the widest part",
    "cross back": "from shoulder point to shoulder point",
    "back waist length": "from the bone at the nape to the waist",
    "body length": "from the bone at the nape to where a garment is to end",
    "back hip length": "from the bone at the nape to the hips",
    "armhole depth": "from the top of the shoulder down to the underarm",
    "arm length to underarm": "from the underarm to the wrist, the arm slightly bent",
    "centre back neck to wrist": "from the nape over the shoulder to the wrist",
    "upper arm": "around the widest part above the elbow",
    "wrist": "around the wrist bone",
    "neck": "around the base of the neck, where a band would lie",
    "head": "around the forehead, above the ears",
    "hand": "around the palm, without the thumb",
    "hand length": "from the wrist bone to the tip of the longest finger",
    "foot": "around the ball of the foot",
    "foot length": "from heel to the longest toe",
}
"""Every measure by its name; standing, arms hanging, over thin clothes (common practice)."""
