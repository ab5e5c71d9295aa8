"""The cautions that stand before pages of the handbook, whatever a collection says."""

from benchsheaf.markup import Markup
from benchsheaf.pages.views import CautionView

PLUG_OUT = CautionView(
    ident="caution-plug-out",
    sign="plug-out",
    order=Markup("Mains plug out, wait, measure."),
    says=Markup(
        "The wait alone proves nothing: with an open bleeder a reservoir is still charged. Prove the meter on a known "
        "voltage before and after. Nothing on this page makes it safe to touch anything."
    ),
)
TRAINED = CautionView(
    ident="caution-trained",
    sign="electricity",
    order=Markup("The mains side is for people who are trained and allowed."),
    says=Markup("Picture tubes and sealed drives stay closed. If you were not trained, give it to licensed people."),
)
BURNS = CautionView(
    ident="caution-burns",
    sign="flammable",
    order=Markup("Alcohol burns, cells leak and burst."),
    says=Markup(
        "Room aired, goggles and gloves, no flame; never on a live board. Never charge a lithium primary cell."
    ),
)
