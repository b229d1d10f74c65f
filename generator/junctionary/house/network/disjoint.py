"""Sets that are joined one by one, and of which only the members are asked for at the end."""


class DisjointSets:
    """The numbers from 0 to ``size`` - 1, each at first alone."""

    __slots__ = ("_parent", "_size")

    def __init__(self, size: int) -> None:
        self._parent = list(range(size))
        self._size = [1] * size

    def root(self, member: int) -> int:
        """The member that stands for its whole set."""
        parent = self._parent
        while parent[member] != member:
            parent[member] = parent[parent[member]]
            member = parent[member]
        return member

    def join(self, one: int, other: int) -> None:
        """Make the sets of two members one; the smaller is hung under the larger."""
        one, other = self.root(one), self.root(other)
        if one == other:
            return
        if self._size[one] < self._size[other]:
            one, other = other, one
        self._parent[other] = one
        self._size[one] += self._size[other]

    def numbered(self) -> list[int]:
        """For each member the number of its set, sets counted from 0 in the order of their first members."""
        numbers: dict[int, int] = {}
        return [numbers.setdefault(self.root(member), len(numbers)) for member in range(len(self._parent))]
