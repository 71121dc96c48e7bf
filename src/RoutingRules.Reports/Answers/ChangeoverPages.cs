using System.Globalization;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Reports.Names;
using RoutingRules.Reports.Sheets;
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
            LastSafe(plan) is not { } safe
                ? "Once this has begun, finish it: there is no point from which the act before can be restored at once."
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"Last safe point to go back: after step {safe.Number}. Until then, opening what was muted restores the act before. "
                        + $"From step {safe.Number + 1} on, finish."
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
        Order(page, plan, names);
        return page;
    }

    /// <summary>What the stage manager calls: each part of the work with the places that have something to do in it.</summary>
    private static void Order(Page page, ChangeoverPlan plan, PanelNames names)
    {
        foreach (var timing in plan.Tasks.GroupBy(task => task.Timing))
        {
            var table = new PageTable
            {
                Title = $"{Title(timing.Key)} ({Minutes(plan.Seconds(timing.Key))})",
                Columns = [("What", 30), ("Where, and which steps of the card", 64), ("Done", 6)],
            };
            foreach (var part in timing.GroupBy(task => Part(task.Steps[0].Phase, task.IsLoad)))
            {
                var places = part.GroupBy(task => task.Place)
                    .Select(place => $"{(place.Key is { } id ? names.Device(id) : "everywhere")} {SheetWords.Runs(place.Select(task => task.Number))}");
                table.Rows.Add(new PageRow { Cells = [PageLayout.Strong(part.Key), Cell(string.Join("; ", places)), PageLayout.Tick("")] });
            }

            page.Tables.Add(table);
        }
    }

    private static string Part(ChangeoverPhase phase, bool isLoad) =>
        phase switch
        {
            ChangeoverPhase.Prepare => isLoad ? "Load ahead" : "Check and plug ahead",
            ChangeoverPhase.Mute => "Mute",
            ChangeoverPhase.PhantomOff => "Phantom power off",
            ChangeoverPhase.Stage => "Clear, bring and plug",
            ChangeoverPhase.PhantomOn => "Phantom power on",
            ChangeoverPhase.ReadBack => "Read back the plugs",
            ChangeoverPhase.Patch or ChangeoverPhase.Labels => "Recall and load",
            ChangeoverPhase.Verify => "Check, still muted",
            ChangeoverPhase.Clock => "Clock",
            _ => "Open and line-check",
        };

    /// <summary>The last task after which the act before can be restored at once; null for none.</summary>
    private static ChangeoverTask? LastSafe(ChangeoverPlan plan) => plan.Tasks.LastOrDefault(task => task.Steps[^1].Number <= plan.RollbackAfter);

    private static Page Card(ChangeoverPlan plan, ChangeoverCard card, string way, string code, PanelNames names)
    {
        var page = new Page
        {
            Title = card.Title,
            Aside = card.Zone,
            HasAllCautions = false,
            Code = code,
        };
        page.Facts.Add($"{way}. {PlainText.Count(card.Tasks.Count, "step", "steps")}, numbered as in the whole changeover.");
        var safe = LastSafe(plan)?.Number ?? 0;
        if (card.Tasks[0].Number <= safe && card.Tasks.FirstOrDefault(task => task.Number > safe) is { } next)
        {
            page.Facts.Add(
                string.Create(CultureInfo.InvariantCulture, $"Do not start step {next.Number} before the stage manager says go: after it there is no way back.")
            );
        }

        foreach (var timing in card.Tasks.GroupBy(task => task.Timing))
        {
            var table = new PageTable
            {
                Title = $"{Title(timing.Key)} ({Minutes(timing.Sum(task => task.Seconds))})",
                Columns = [("Step", 9), ("What", 85), ("Done", 6)],
                HasBigFirst = true,
            };
            table.Rows.AddRange(timing.Select(task => Row(task, names)));
            page.Tables.Add(table);
        }

        return page;
    }

    /// <summary>A task with the steps that are folded in it below.</summary>
    private static PageRow Row(ChangeoverTask task, PanelNames names)
    {
        var what = new List<PageLine> { new(names.In(task.Text, task.Place), PageLineStyle.Strong) };
        var folded = task.Steps.Count == 1 && task.Text == task.Steps[0].Text ? [] : task.Steps.Select(step => step.Text.TrimEnd('.'));
        what.AddRange(DevicePages.Notes(string.Join("; ", folded.Select(text => names.In(text, task.Place)))));
        what.AddRange(DevicePages.Notes(string.Join("; ", task.Steps.SelectMany(step => step.Details).Select(detail => names.In(detail, task.Place)))));
        what.AddRange(Cell([.. task.Steps.SelectMany(step => step.Hazards).Distinct().Select(hazard => $"Mind: {hazard}")]));
        return new PageRow { Cells = [PageLayout.Strong(SheetWords.Number(task.Number)), what, PageLayout.Tick("")] };
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
