using System.Globalization;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Reports.Names;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Rules;
using static RoutingRules.Reports.Answers.ComparisonPages;

namespace RoutingRules.Reports.Answers;

/// <summary>Lays out changeovers: an overview with every step, then a card for each place.</summary>
internal static class ChangeoverPages
{
    private const int SecondsPerMinute = 60;

    public static List<Page> Pages(
        ChangeoverPlan plan,
        string from,
        string to,
        int? minutes,
        ValueList<Finding> hazards,
        (string Before, string After) codes,
        PanelNames? names
    )
    {
        var way = $"{from} \u2192 {to}";
        var pages = new List<Page> { Overview(plan, way, minutes, hazards, codes, names ?? PanelNames.Ids) };
        pages.AddRange(plan.Cards.Select(card => Card(plan, card, way, codes.After, names ?? PanelNames.Ids)));
        return pages;
    }

    public static string Minutes(int seconds) =>
        seconds == 0 ? "no time"
        : seconds < SecondsPerMinute ? "under 1 min"
        : string.Create(CultureInfo.InvariantCulture, $"about {(seconds + SecondsPerMinute - 1) / SecondsPerMinute} min");

    private static Page Overview(
        ChangeoverPlan plan,
        string way,
        int? minutes,
        ValueList<Finding> hazards,
        (string Before, string After) codes,
        PanelNames names
    )
    {
        var page = new Page
        {
            Title = way,
            Aside = "changeover",
            Code = codes.After,
        };
        page.Facts.Add($"From the sheets with code {codes.Before} to those with code {codes.After}.");
        if (plan.Steps.IsEmpty)
        {
            page.Facts.Add("Nothing has to be done.");
            return page;
        }

        page.Facts.Add(
            $"With one person at each place: {Minutes(plan.Seconds(ChangeoverTiming.Ahead))} ahead, "
                + $"{Minutes(plan.Seconds(ChangeoverTiming.ClearStage))} on the clear stage, "
                + $"{Minutes(plan.Seconds(ChangeoverTiming.BeforeLineCheck))} before line check, {Minutes(plan.Seconds(ChangeoverTiming.LineCheck))} "
                + "line check."
                + (minutes is { } there ? string.Create(CultureInfo.InvariantCulture, $" There are {there} min.") : "")
        );
        page.Facts.Add(
            plan.RollbackAfter == 0
                ? "Once this has begun, finish it: there is no point from which the act before can be restored at once."
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"Last safe point to go back: after step {plan.RollbackAfter}. Until then, opening what was muted restores the act before. "
                        + $"From step {plan.RollbackAfter + 1} on, finish."
                )
        );
        page.Facts.AddRange(plan.Remarks);
        Add(page, "Dangers of the change", Findings(hazards));
        Add(
            page,
            "Places",
            Table(
                [("Place", 40), ("Ahead", 15), ("Clear stage", 15), ("Before line check", 15), ("Line check", 15)],
                plan.Cards.Select(card => new PageRow
                {
                    Cells =
                    [
                        [new PageLine(card.Title, PageLineStyle.Strong), .. Cell(card.Zone)],
                        .. Enum.GetValues<ChangeoverTiming>().Select(timing => card.Seconds(timing) is var seconds and > 0 ? Cell(Minutes(seconds)) : []),
                    ],
                })
            )
        );
        Steps(page, plan, plan.Steps, hasPlace: true, names);
        return page;
    }

    private static Page Card(ChangeoverPlan plan, ChangeoverCard card, string way, string code, PanelNames names)
    {
        var page = new Page
        {
            Title = card.Title,
            Aside = card.Zone,
            HasAllCautions = false,
            Code = code,
        };
        page.Facts.Add($"{way}. {PlainText.Count(card.Steps.Count, "step", "steps")}, numbered as in the whole changeover.");
        if (card.Steps.Any(step => step.Number <= plan.RollbackAfter) && card.Steps.Any(step => step.Number > plan.RollbackAfter))
        {
            page.Facts.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Do not start step {card.Steps.First(step => step.Number > plan.RollbackAfter).Number} before the stage manager says go: "
                        + $"after it there is no way back."
                )
            );
        }

        Steps(page, plan, card.Steps, hasPlace: false, names);
        return page;
    }

    private static void Steps(Page page, ChangeoverPlan plan, ValueList<ChangeoverStep> steps, bool hasPlace, PanelNames names)
    {
        foreach (var timing in steps.GroupBy(step => step.Timing))
        {
            var table = new PageTable
            {
                Title = $"{Title(timing.Key)} ({Minutes(hasPlace ? plan.Seconds(timing.Key) : timing.Sum(step => step.Seconds))})",
                Columns = hasPlace ? [("Step", 9), ("Where", 17), ("What", 68), ("Done", 6)] : [("Step", 9), ("What", 85), ("Done", 6)],
                HasBigFirst = true,
            };
            foreach (var step in timing)
            {
                var what = new List<PageLine> { new(names.In(step.Text, step.Place), PageLineStyle.Strong) };
                what.AddRange(Cell(step.Details.IsEmpty ? null : string.Join("; ", step.Details.Select(detail => names.In(detail, step.Place)))));
                what.AddRange(Cell([.. step.Hazards.Select(hazard => $"Mind: {hazard}")]));
                List<PageLine>[] cells = [PageLayout.Strong(step.Number.ToString(CultureInfo.InvariantCulture)), what, PageLayout.Tick("")];
                table.Rows.Add(
                    new PageRow { Cells = !hasPlace ? cells : [cells[0], Cell(step.Place is { } place ? names.Device(place) : "everywhere"), .. cells[1..]] }
                );
            }

            page.Tables.Add(table);
        }
    }

    private static string Title(ChangeoverTiming timing) =>
        timing switch
        {
            ChangeoverTiming.Ahead => "While the act before plays",
            ChangeoverTiming.ClearStage => "When the stage is clear",
            ChangeoverTiming.BeforeLineCheck => "Before line check",
            _ => "Line check",
        };
}
