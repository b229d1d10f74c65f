"""Builds the terms sheet: the trade's words as this manual uses them, symbols and colours."""

from junctionary.sheets.circuit import Symbol
from junctionary.sheets.entries import SEVERITIES, SEVERITY_MEANS
from junctionary.sheets.links import Ref
from junctionary.sheets.notes import ColourCode, SymbolEntry, Term, TermsSheet
from junctionary.sheets.survey import Survey, title
from junctionary.sheets.titleblock import GENERAL

WORDS = {
    "panel": "a load centre: where circuits begin",
    "space": "a breaker position in a panel",
    "pole": "one switched conductor of a breaker",
    "leg": "one of the two 120 V halves of the service, A or B",
    "circuit": "what one breaker, or one handle-tied pair, feeds",
    "multiwire circuit": "two hots on opposite legs that share one neutral; both must be off",
    "feeder": "the circuit from one panel to another",
    "run": "one cable from one end point to another",
    "home run": "the run that starts in a panel",
    "box": "any enclosure with conductors in it: for a device, a joint, a lamp",
    "make-up": "how the conductors in one box are joined and landed",
    "joint": "conductors connected together in a connector; also called a splice",
    "pigtail": "a short conductor from a joint to a device's terminal",
    "feed-through": "a device whose own terminals carry the circuit onward",
    "termination": "one conductor on one terminal, and how: loop, clamp-plate, push-in, lead or lug",
    "loop": "a conductor bent around a screw",
    "clamp-plate": "a conductor held straight under a plate by a screw",
    "push-in": "a conductor held by a spring",
    "lead": "a device's own wire",
    "lug": "a large terminal, as in a panel",
    "twist-on, lever, crimp, set-screw": "kinds of connector, beside push-in",
    "net": "all conductors and terminals that are one electrical point with every switch and breaker open",
    "isolate": "make dead: the set of breakers to switch off",
    "traveler": "one of the two conductors between 3-way switches",
    "common": "the odd terminal of a 3-way switch",
    "re-marked": "a white conductor marked as one that is hot",
    "capped": "a conductor that ends in a connector of its own and feeds nothing",
    "line, load": "towards the supply; towards what is guarded",
    "GFCI": "a device that opens when current leaks to ground",
    "AFCI": "a breaker that opens when it sees an arc",
    "bonded": "neutral and ground joined; once, at the service",
    "dead front": "the inner cover of a panel, behind which the lugs stay live",
    "finding": "what a check says",
    "evidence": "how a fact is known: measured, seen, photo, told or assumed",
    "by the word": "worked out from one word of make-up, not written joint by joint",
    "not recorded": "left out: nobody wrote it down",
    "unknown": "looked at, and nobody can tell",
}

SYMBOLS: dict[Symbol, str] = {
    "breaker": "breaker",
    "panel": "panel",
    "receptacle": "duplex receptacle",
    "receptacle-single": "single receptacle",
    "receptacle-240": "240 V receptacle",
    "gfci": "receptacle with GFCI",
    "switch": "switch",
    "switch-3": "3-way switch",
    "switch-4": "4-way switch",
    "light": "luminaire",
    "fan": "fan",
    "smoke-alarm": "smoke alarm",
    "junction": "box that only joins",
    "inlet": "inlet",
    "appliance": "appliance, wired in",
    "unknown": "unknown",
}

COLOURS = {
    "black": "BK",
    "white": "WH",
    "red": "RD",
    "blue": "BU",
    "bare": "bare",
    "green": "GN",
    "orange": "OG",
    "yellow": "YE",
    "brown": "BN",
    "grey": "GY",
}


def terms_sheet(survey: Survey) -> TermsSheet:
    """The legend of the manual."""
    return TermsSheet(
        title=title(survey, "Terms and symbols", GENERAL["terms"], "general"),
        ref=Ref("sheet", "terms"),
        heading="Terms and symbols",
        lead=("Colour on these sheets means a conductor's insulation, and nothing else.",),
        terms=tuple(Term(Ref("term", word.replace(" ", "-")), word, means) for word, means in WORDS.items()),
        colours=tuple(ColourCode(colour, letters) for colour, letters in COLOURS.items()),
        symbols=tuple(SymbolEntry(symbol, means) for symbol, means in SYMBOLS.items()),
        severities=tuple((each, SEVERITY_MEANS[each]) for each in SEVERITIES),
    )
