"""What today's edition would ask of work that is judged by its own time."""

from junctionary.checks.engine import judge
from junctionary.checks.finding import Finding, Judgement
from junctionary.figures import work_out
from junctionary.house.editions import built_today
from junctionary.house.model import House
from junctionary.house.network import Network


def asked_today(house: House, network: Network, judgement: Judgement) -> tuple[Finding, ...]:
    """The findings that would be new if all work were judged by the reference edition.

    Old work need not meet them while it is left as it is. None where all is of that edition already.
    """
    today = built_today(house)
    if today is None:
        return ()
    told = {(each.rule, each.about, each.place) for each in judgement.findings}
    found = judge(today, network, work_out(today, network)).findings
    return tuple(each for each in found if (each.rule, each.about, each.place) not in told)
