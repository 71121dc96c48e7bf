using System.Globalization;
using RoutingRules.Documents.Text;
using RoutingRules.Planning.RunningOrders;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Reports.Names;
using RoutingRules.Reports.Sheets.Pages;
using static RoutingRules.Reports.Answers.ComparisonPages;

namespace RoutingRules.Reports.Answers;

/// <summary>Lays out a running order: the day, the kit, then each changeover.</summary>
internal static class RunningOrderPages
{
    public static List<Page> Pages(RunningOrderPlan plan, PanelNames? names)
    {
        var pages = new List<Page> { Day(plan) };
        pages.AddRange(FestivalGridPages.Pages(plan));
        var codes = plan.Acts.Select(act => ContentCode.Of(act.Show)).ToArray();
        for (var i = 0; i < plan.Changeovers.Count; i++)
        {
            var changeover = plan.Changeovers[i];
            pages.AddRange(
                ChangeoverPages.Pages(
                    changeover.Plan,
                    changeover.From.DisplayName,
                    changeover.To.DisplayName,
                    changeover.To.ChangeoverMinutes,
                    changeover.Comparison.Hazards,
                    (codes[i], codes[i + 1]),
                    names
                )
            );
        }

        return pages;
    }

    private static Page Day(RunningOrderPlan plan)
    {
        var page = new Page { Title = "Running order" };
        page.Facts.Add(
            $"{PlainText.Count(plan.Acts.Count, "act", "acts")}, {PlainText.Count(plan.Changeovers.Count, "changeover", "changeovers")}. Times are "
                + "estimates with one person at each place."
        );
        var acts = new PageTable { Title = "Acts", Columns = [("Start", 16), ("Act", 30), ("Changeover", 20), ("Patch", 14), ("Left to do", 20)] };
        for (var i = 0; i < plan.Acts.Count; i++)
        {
            var act = plan.Acts[i];
            var changeover = i == 0 ? null : plan.Changeovers[i - 1];
            var own = plan.OwnFindings(act);
            acts.Rows.Add(
                new PageRow
                {
                    Cells =
                    [
                        PageLayout.Strong(
                            string.Join(
                                ' ',
                                new[]
                                {
                                    act.Act.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                                    act.Act.Start?.ToString("HH:mm", CultureInfo.InvariantCulture),
                                }.Where(part => part is not null)
                            )
                        ),
                        [new PageLine(act.Act.DisplayName, PageLineStyle.Strong), .. Cell(act.Act.Notes)],
                        changeover is null
                            ? []
                            : Cell(
                                ChangeoverPages.Minutes(changeover.Plan.SecondsAfterTheActBefore),
                                act.Act.ChangeoverMinutes is { } minutes ? string.Create(CultureInfo.InvariantCulture, $"of {minutes} min") : null,
                                PlainText.Count(changeover.Plan.Tasks.Count, "step", "steps")
                            ),
                        Cell(act.IsAssigned ? "worked out" : "as written"),
                        Cell(
                            act.Unplaced.IsEmpty ? null : $"{PlainText.Count(act.Unplaced.Count, "feed or line", "feeds and lines")} without a place",
                            own.IsEmpty ? null : PlainText.Count(own.Count, "finding", "findings")
                        ),
                    ],
                }
            );
        }

        page.Tables.Add(acts);
        Add(page, "About the running order", Findings(plan.RunFindings));
        Add(page, "Common to all acts: mend once", Findings(plan.CommonFindings));
        foreach (var act in plan.Acts)
        {
            Add(page, $"Only in {act.Act.DisplayName}", Findings(plan.OwnFindings(act)));
            Add(
                page,
                $"Without a place in {act.Act.DisplayName}",
                Table(
                    [("What", 30), ("Why", 70)],
                    act.Unplaced.Select(unplaced => new PageRow { Cells = [PageLayout.Strong(unplaced.Demand), Cell(unplaced.Reason)] })
                )
            );
        }

        Add(
            page,
            "Kit: the most of each that one act needs",
            Table(
                [("What", 40), ("Kind", 15), ("Most", 10), ("Acts", 35)],
                plan.Kit.Select(total => new PageRow
                {
                    Cells =
                    [
                        [
                            new PageLine(total.Kind == KitKind.Pack ? $"pack {total.Name}" : total.Name, PageLineStyle.Strong),
                            .. Cell(total.SuppliedBy is null ? null : $"from {total.SuppliedBy}"),
                        ],
                        Cell(JsonMembers.Word(total.Kind)),
                        Cell(total.Most.ToString(CultureInfo.InvariantCulture)),
                        Cell(string.Join(", ", total.Acts)),
                    ],
                })
            )
        );
        return page;
    }
}
