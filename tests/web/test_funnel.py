from app.book.settings import Settings
from app.planning.funnel import Stage
from app.web.pages.funnel import USUAL_COLOUR, funnel_picture
from app.web.shown import THIN, Shown

SHOWN = Shown(Settings())
STAGES = (Stage("scoured", 200.0), Stage("carded", 180.0, 20.0), Stage("yarn", 171.0, 9.0))


def test_bands_are_as_wide_as_their_grams_and_meet_their_tapers():
    found = funnel_picture(STAGES, "#ece3d0", SHOWN)
    assert found.bands[0].band == "155.0,1.0 355.0,1.0 355.0,15.0 155.0,15.0"
    assert found.bands[0].taper == "155.0,15.0 355.0,15.0 345.0,35.0 165.0,35.0"
    assert found.bands[1].band.startswith("165.0,35.0 345.0,35.0")
    assert found.bands[-1].taper == ""
    assert (found.height, found.colour) == (84.0, "#ece3d0")


def test_the_picture_says_the_same_in_words():
    words = funnel_picture(STAGES, "", SHOWN).words.replace(THIN, " ")
    assert words == "scoured 200 g; carded 180 g, 20 g lost; yarn 171 g, 9 g lost"


def test_without_a_colour_and_without_wool():
    assert funnel_picture(STAGES, "", SHOWN).colour == USUAL_COLOUR
    assert funnel_picture((), "", SHOWN).bands == ()
    assert funnel_picture((Stage("raw", 0.0), Stage("yarn", 0.0)), "", SHOWN).bands[0].lost == ""
