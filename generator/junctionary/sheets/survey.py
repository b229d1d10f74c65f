"""All that the sheets are drawn from: the house, its figures, what was judged, the record's lines."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from junctionary.checks.engine import rules
from junctionary.checks.finding import Finding, Judgement
from junctionary.checks.today import asked_today
from junctionary.checks.wanted import alike, wanted
from junctionary.figures import Figures
from junctionary.house.geometry import Shape, shapes
from junctionary.house.isolate import Isolation, isolate
from junctionary.house.model import Box, House
from junctionary.house.network import Network
from junctionary.house.routes import Route, routes_of
from junctionary.marks import Place
from junctionary.sheets.entries import SEVERITIES, Excerpt, FindingEntry, MissingEntry, Severity
from junctionary.sheets.face import PanelFace
from junctionary.sheets.faces import panel_face
from junctionary.sheets.links import Kind, Link, Phrase, Ref, listed
from junctionary.sheets.naming import box_of, counted, homes, link, ref_of
from junctionary.sheets.titleblock import TitleBlock
from junctionary.sheets.wording import names_in, on_sheet, with_names

SHORT_DIGEST = 12


@dataclass(frozen=True, slots=True)
class Survey:
    """What every builder of sheets is given.

    ``today`` is what today's edition would ask of older work besides.
    ``findings_at``, ``missing_at`` and ``today_at`` hold, for each thing that has a page,
    what concerns it; ``gravest_at`` the gravest finding marked on each thing;
    ``faces`` the face of each panel;
    ``shapes`` the shape of each room that has one; ``routes`` the route of each run
    that has one recorded; ``lines`` the text files of the record; ``isolations``
    what must be off before each box is opened; ``controls`` pairs each box
    with a switch with the boxes of what it switches.
    """

    house: House
    network: Network
    figures: Figures
    judgement: Judgement
    digest: str
    lines: Mapping[str, tuple[str, ...]]
    findings: tuple[FindingEntry, ...]
    missing: tuple[MissingEntry, ...]
    findings_at: Mapping[Ref, tuple[FindingEntry, ...]]
    missing_at: Mapping[Ref, tuple[MissingEntry, ...]]
    gravest_at: Mapping[Ref, Severity]
    faces: Mapping[str, PanelFace]
    shapes: Mapping[str, Shape]
    routes: Mapping[str, Route]
    today: tuple[FindingEntry, ...]
    today_at: Mapping[Ref, tuple[FindingEntry, ...]]
    isolations: Mapping[str, Isolation]
    controls: tuple[tuple[str, str], ...]


def survey(
    house: House,
    network: Network,
    figures: Figures,
    judgement: Judgement,
    digest: str,
    lines: Mapping[str, tuple[str, ...]],
) -> Survey:
    """The survey of one house; ``digest`` is that of the whole record."""
    findings, findings_at = _placed(house, judgement.findings, "finding")
    today, today_at = _placed(house, asked_today(house, network, judgement), "today")
    missing, missing_at = _missing_entries(house, judgement)
    gravest_at, known = _gravest(findings), shapes(house)
    return Survey(
        house,
        network,
        figures,
        judgement,
        digest,
        lines,
        findings,
        missing,
        findings_at,
        {home: tuple(entries) for home, entries in missing_at.items()},
        gravest_at,
        {
            each.id: panel_face(house, _by_breaker(house, gravest_at, findings_at), each)
            for each in house.panels.values()
        },
        known,
        routes_of(house, known),
        today,
        today_at,
        {each: isolate(house, network, each) for each in house.boxes},
        tuple(dict.fromkeys(_controls(house, figures))),
    )


def _by_breaker(
    house: House, gravest_at: Mapping[Ref, Severity], findings_at: Mapping[Ref, tuple[FindingEntry, ...]]
) -> dict[str, Severity]:
    """The gravest finding at each breaker itself, or on the sheet of what it feeds."""
    found = {}
    for breaker in house.breakers.values():
        grave = [each.severity for each in findings_at.get(Ref("circuit", str(breaker.feeds)), ())]
        grave += [gravest_at[own]] if (own := Ref("space", breaker.id)) in gravest_at else []
        if grave:
            found[breaker.id] = min(grave, key=SEVERITIES.index)
    return found


def _controls(house: House, figures: Figures) -> Iterable[tuple[str, str]]:
    for table in figures.lamps:
        for switch in (*table.always, *table.sometimes):
            pair = (house.devices[switch].box, house.devices[table.device].box)
            if pair[0] != pair[1]:
                yield pair


def title(survey: Survey, sheet: str, number: str, known_by: str) -> TitleBlock:
    """The title block of one sheet of this house."""
    dated = survey.house.record.recorded or max(
        (entry.date for entry in survey.house.log), default="not dated"
    )
    return TitleBlock(survey.house.name, sheet, number, dated, survey.digest[:SHORT_DIGEST], known_by)


def edition_words(edition: str) -> str:
    """``NEC 2023`` for ``nec-2023``."""
    return edition.replace("-", " ").upper()


def sentence(words: str) -> str:
    """Words as a sentence: a capital at its head, a full stop at its end."""
    return f"{words[:1].upper()}{words[1:]}."


def known_words(how: str, missing: int) -> str:
    """How sure a sheet is, for its title block."""
    return f"{how}, {counted(missing, 'fact')} missing" if missing else how


def boxes_known(boxes: Iterable[Box]) -> str:
    """How these boxes are known: ``9 boxes seen, 2 told; 30 of 34 joints by the word``."""
    kept = tuple(boxes)
    if not kept:
        return "no box recorded"
    hows = [str(each.evidence.how) if each.evidence else "with no evidence" for each in kept]
    said = [f"{hows.count(how)} {how}" for how in sorted(set(hows), key=lambda how: (-hows.count(how), how))]
    joints = [joint for each in kept for joint in each.joints]
    by_word = sum(joint.expanded is not None for joint in joints)
    worded = f"; {by_word} of {counted(len(joints), 'joint')} by the word" if by_word else ""
    return f"{'box' if len(kept) == 1 else 'boxes'}: {', '.join(said)}{worded}"


def cited(cites: Iterable[object]) -> str:
    """Sources, those of one publication together: ``NEC 2023, 240.4, 240.4(D); UL 498, one wire``."""
    found: dict[str, dict[str, None]] = {}
    for each in cites:
        publication, _, locator = str(each).partition(", ")
        found.setdefault(publication, {})[locator] = None
    return "; ".join(", ".join((name, *filter(None, places))) for name, places in found.items())


def excerpts(survey: Survey, *places: Place) -> tuple[Excerpt, ...]:
    """The lines of the record that tell each thing, from its key to the end of what is under it."""
    return tuple(each for place in places if (each := _excerpt(survey.lines, place)) is not None)


def _excerpt(lines: Mapping[str, tuple[str, ...]], place: Place) -> Excerpt | None:
    text = lines.get(place.file)
    if text is None or not 0 < place.line <= len(text):
        return None
    if place.column == 1:
        return Excerpt(place.file, 1, "\n".join(text).rstrip("\n"))
    first = place.line - 1
    indent = _indent(text[first])
    last = first
    for index in range(first + 1, len(text)):
        if text[index].strip():
            if _indent(text[index]) <= indent:
                break
            last = index
    return Excerpt(place.file, first + 1, "\n".join(text[first : last + 1]))


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip(" "))


def _placed(
    house: House, findings: tuple[Finding, ...], kind: Kind
) -> tuple[tuple[FindingEntry, ...], dict[Ref, tuple[FindingEntry, ...]]]:
    """Findings as entries, and by each page that they belong on."""
    entries = tuple(_finding_entries(house, findings, kind))
    at: dict[Ref, tuple[FindingEntry, ...]] = {}
    for finding, entry in zip(findings, entries, strict=True):
        for home in homes(house, finding.about, finding.place):
            at[home] = (*at.get(home, ()), entry)
    return entries, at


def _gravest(findings: Iterable[FindingEntry]) -> dict[Ref, Severity]:
    """By thing, the gravest finding about it.

    A finding marks its subject, and every breaker it names: that is where somebody reads of a circuit.
    """
    found: dict[Ref, Severity] = {}
    for finding in findings:
        named = [piece.to for piece in finding.about if not isinstance(piece, str)]
        for to in (*named[:1], *(each for each in named if each.kind == "space")):
            found[to] = min(found.get(to, finding.severity), finding.severity, key=SEVERITIES.index)
    return found


def _finding_entries(house: House, findings: Iterable[Finding], kind: Kind) -> Iterable[FindingEntry]:
    known = rules()
    used: dict[str, int] = {}
    for finding in findings:
        name = f"{finding.rule}:{finding.about[0] if finding.about else finding.place.line}"
        used[name] = used.get(name, 0) + 1
        id_ = name if used[name] == 1 else f"{name}:{used[name]}"
        rule = known.get(finding.rule)
        yield FindingEntry(
            ref=Ref(kind, id_),
            severity=finding.severity,
            rule=Ref("rule", finding.rule),
            says=rule.title if rule else finding.rule,
            about=listed(
                tuple(link(house, each, place=finding.place) for each in _apart(house, finding.about))
            ),
            found=on_sheet(house, finding.found),
            allowed=on_sheet(house, finding.allowed),
            because=on_sheet(house, finding.because),
            do=on_sheet(house, finding.do),
            source=cited(finding.cites),
            place=str(finding.place),
            accepted=_accepted(finding),
        )


def _accepted(finding: Finding) -> str:
    word = finding.accepted
    return f"by the {word.by}, {word.date}: {word.reason}" if word else ""


def _apart(house: House, about: Iterable[str]) -> Iterable[str]:
    """The first of all names that lead to one place: a terminal, but not its device and its wire as well."""
    led: set[Ref] = set()
    for name in about:
        to = ref_of(house, name)
        if to is None:
            yield name
            continue
        page = Ref("box", box_of(to)) if to.kind in ("device", "joint") else to
        if page not in led:
            yield name
        led.add(page)


def in_fewer(missing: Sequence[MissingEntry]) -> tuple[MissingEntry, ...]:
    """Missing facts for a page: what is missing of several circuits, rooms or boxes is told once."""
    found = []
    for words, positions in alike([each.what for each in missing]):
        several = [missing[each] for each in positions]
        about, settles = (
            tuple(dict.fromkeys(piece for each in phrases for piece in each if isinstance(piece, Link)))
            for phrases in ([each.about for each in several], [each.settles for each in several])
        )
        names = {id_: name for each in several for id_, name in each.names.items()}
        told = with_names(words, names)
        if len(several) == 1:
            found.append(MissingEntry(told, several[0].about, several[0].settles))
        else:
            found.append(MissingEntry(told, listed(about), listed(settles)))
    return tuple(found)


def _missing_entries(
    house: House, judgement: Judgement
) -> tuple[tuple[MissingEntry, ...], dict[Ref, list[MissingEntry]]]:
    """Each missing fact once, with every check it would settle, those that settle most first."""
    entries: list[MissingEntry] = []
    at: dict[Ref, list[MissingEntry]] = {}
    for each in wanted(house, judgement.unrecorded):
        settles: Phrase = listed(tuple(Link(rule, Ref("rule", rule)) for rule in each.rules))
        about = listed(tuple(link(house, one, place=each.place) for one in each.about))
        entry = MissingEntry(each.fact, about, settles, names_in(house, each.fact))
        entries.append(entry)
        for home in homes(house, each.about, each.place):
            at.setdefault(home, []).append(entry)
    return tuple(entries), at
