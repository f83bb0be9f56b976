"""What is said once a skein is saved, and when its fleece holds too little."""

from app.web.pages.answer import counted
from app.web.shown import Shown
from app.work.skein_add import NewSkein, Saved
from app.work.skein_spin import TooLittleWool


def came_said(new: NewSkein, saved: Saved, shown: Shown) -> str:
    """ "G-014 is on the shelf; 101 g were taken off the fleece for it." """
    code = saved.holdings[0].code
    taken = sum(-line.mg for line in saved.event.lines if line.mg < 0) / 1000
    if saved.event.kind == "spin":
        return f"{code} is on the shelf; {shown.mass(taken)} were taken off the fleece for it."
    damp = ", damp: weigh it again when it is dry" if new.weight.wool == "damp" else ""
    return f"{code} is on the shelf with {shown.mass(new.weight.mg / 1000)}{damp}."


def bought_said(saved: Saved) -> str:
    """ "Six balls are on the shelf: M-001 to M-006." """
    codes = [one.code for one in saved.holdings]
    if len(codes) == 1:
        return f"{codes[0]} is on the shelf."
    return (
        f"{counted(len(codes), 'ball').capitalize()} are on the shelf: {codes[0]} to {codes[-1]}."
    )


def too_little_said(lack: TooLittleWool, shown: Shown) -> str:
    """What the fleece holds, what the skein would take, and the ways on."""
    if not lack.held_g:
        return "This fleece holds no wool now. Choose another, or say it was spun before."
    return (
        f"This fleece holds {shown.mass(lack.held_g)} ({lack.state}); the skein would take about "
        f"{shown.short_mass(lack.needed_g)} of it. Weigh the fleece again, choose another, or say "
        "the skein was spun before the fleece was last weighed."
    )
