using RoutingRules.Planning.RunningOrders;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>Lays out inputs by acts.</summary>
internal static class FestivalGridPages
{
    /// <summary>So many acts stand side by side on upright paper.</summary>
    private const int ActsAcross = 5;

    private const int InputShare = 24;

    public static IEnumerable<Page> Pages(RunningOrderPlan plan)
    {
        if (plan.Grid.IsEmpty)
        {
            yield break;
        }

        var page = new Page { Title = "Festival grid", HasAllCautions = false };
        page.Facts.Add(
            "Which line of which act stands at which input. \"=\" before a name: it stays plugged from the act before. \"\u2013\": nothing is plugged."
        );
        for (var first = 0; first < plan.Acts.Count; first += ActsAcross)
        {
            page.Tables.Add(Table(plan, first, Math.Min(ActsAcross, plan.Acts.Count - first)));
        }

        yield return page;
    }

    private static PageTable Table(RunningOrderPlan plan, int first, int count)
    {
        var table = new PageTable
        {
            Title = $"Inputs, acts {SheetWords.Number(first + 1)} to {SheetWords.Number(first + count)}",
            Columns =
            [
                ("Input", InputShare),
                .. plan.Acts.Skip(first).Take(count).Select(act => new PageColumn(act.Act.DisplayName, (100 - InputShare) / count)),
            ],
        };
        table.Rows.AddRange(
            plan.Grid.Select(row => new PageRow { Cells = [PageLayout.Strong(row.At.ToString()), .. row.Acts.Skip(first).Take(count).Select(Cell)] })
        );
        return table;
    }

    private static List<PageLine> Cell(GridCell? cell) =>
        cell is null ? PageLayout.Cell("\u2013")
        : cell.Stays ? PageLayout.Cell($"= {cell.Line}")
        : PageLayout.Strong(cell.Line);
}
