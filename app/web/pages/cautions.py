"""The usual cautions where work with wool can hurt somebody; local rules come before them."""

CAUTIONS = {
    "raw": "Raw fleece carries dust, dung and at times disease. Work where the air moves, wear a "
    "mask, keep hands from the face and wash them after. Scouring water is hot enough to scald.",
    "skirted": "Scouring water is hot enough to scald, and wet fleece is heavy: lift it in "
    "portions. Raw wool carries dust and at times disease: wear a mask and wash your hands.",
    "drying": "Wet fleece is heavy: lift it in portions, with a straight back.",
    "scoured": "Wool combs are as sharp as knives. Clamp them, keep the tines away from you and "
    "cover them when you put them down.",
}
"""The usual cautions for what comes next with wool in each state."""

DYES = (
    "Dyes and mordants are not for the kitchen: keep pots and spoons for them alone, wear gloves, "
    "and a mask over powders, and mind the steam."
)
MOTH = (
    "Look in good light, outdoors or over a sheet: eggs, webbing, grit like sand, short broken "
    "fibres. Raw wool carries dust and at times disease: wear a mask and wash your hands."
)
LONG_SITTING = "Stand up and stretch between bobbins: long spinning strains hands and back."
