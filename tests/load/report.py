"""What was measured, against what was wished for, in one table."""


class Report:
    """Rows of figure, value, bar and whether it was met."""

    def __init__(self, title):
        self.title = title
        self.rows = []

    def note(self, figure, value):
        """A figure without a bar."""
        self.rows.append((figure, value, "", ""))

    def at_least(self, figure, value, bar, form="{:.2f}"):
        self._hold(figure, value, bar, form, "at least", value >= bar)

    def at_most(self, figure, value, bar, form="{:.2f}"):
        self._hold(figure, value, bar, form, "at most", value <= bar)

    def _hold(self, figure, value, bar, form, word, met):
        row = (figure, form.format(value), f"{word} {form.format(bar)}", "met" if met else "missed")
        self.rows.append(row)

    def print(self):
        rows = [("figure", "value", "bar", "")] + self.rows
        widths = [max(len(row[column]) for row in rows) for column in range(4)]
        print(f"\n{self.title}\n")
        for figure, value, bar, met in rows:
            line = f"{figure:<{widths[0]}}  {value:>{widths[1]}}  {bar:<{widths[2]}}  {met}"
            print(line.rstrip())
