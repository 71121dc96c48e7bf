using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>Lays out what each loss does: what hurts most, then one card for each device, link and supply whose loss is heard.</summary>
internal sealed class ImpactPages
{
    private readonly ImpactAnswer answer;
    private readonly ImpactWords words;

    private ImpactPages(ImpactAnswer answer, Show show)
    {
        this.answer = answer;
        words = new ImpactWords(show);
    }

    public static List<Page> Pages(ImpactAnswer answer, Show show)
    {
        var layout = new ImpactPages(answer, show);
        var cards = new ImpactCards(layout.words);
        var pages = new List<Page> { layout.Overview() };
        var told = new List<LossImpact>();
        foreach (var loss in answer.Losses.Where(HasCard))
        {
            // A supply of one device that has no other does what the device does.
            if (!told.Exists(other => other.Subjects == loss.Subjects && other.Outputs == loss.Outputs && loss.Lost[0].Kind == LossKind.Power))
            {
                told.Add(loss);
                pages.Add(cards.Card(loss, []));
            }
        }

        // Pairs have a card where something can be done, and one for all that are mended by the same steps.
        foreach (var alike in answer.Pairs.Where(pair => pair.Plan is { Recovered.IsEmpty: false }).GroupBy(pair => (pair.Subjects, pair.Outputs, pair.Plan)))
        {
            pages.Add(cards.Card(alike.First(), [.. alike.Skip(1)]));
        }

        return pages;
    }

    private static bool HasCard(LossImpact loss) => !loss.Subjects.IsEmpty && loss.Lost[0].Kind is LossKind.Device or LossKind.Link or LossKind.Power;

    private Page Overview()
    {
        var page = new Page { Title = "What a loss silences" };
        var heard = answer.Losses.Where(loss => !loss.Subjects.IsEmpty).ToList();
        var single = heard
            .Where(loss => loss.IsSinglePoint && loss.Lost[0].Kind != LossKind.Cable && loss.Lost[0].Kind != LossKind.Point)
            .Select(loss => ImpactWords.Things(loss.Lost))
            .ToList();
        page.Facts.Add(
            answer.Losses.IsEmpty ? "There is nothing to lose in this rig of the kinds asked for."
            : heard.Count == 0 ? $"Whichever of {PlainText.Count(answer.Losses.Count, "thing")} fails alone, every feed and line that arrives goes on."
            : $"{PlainText.Count(heard.Count, "single loss is", "single losses are")} heard, of "
                + $"{answer.Losses.Count.ToString(CultureInfo.InvariantCulture)} looked at."
        );
        if (single.Count > 0)
        {
            page.Facts.Add($"Single points of failure of mains, in-ear feeds and others of critical or high priority: {Wording.List(single)}.");
        }

        if (!answer.NotArriving.IsEmpty)
        {
            page.Facts.Add(
                "Not arriving as the show stands, so that no loss can be seen for them: "
                    + $"{Wording.List(answer.NotArriving.Select(words.Demand).ToArray())}. Patch them first."
            );
        }

        if (heard.Count > 0)
        {
            page.Tables.Add(Ranking("What hurts most", heard));
        }

        if (!answer.Pairs.IsEmpty)
        {
            page.Tables.Add(
                Ranking(
                    "Two at once that silence what neither does "
                        + $"alone{(answer.PairsOmitted > 0 ? $", {PlainText.Count(answer.PairsOmitted, "more pair")} not shown" : "")}",
                    answer.Pairs
                )
            );
        }

        if (!answer.FailureSets.IsEmpty)
        {
            page.Tables.Add(Sets());
        }

        return page;
    }

    private static PageTable Ranking(string title, IEnumerable<LossImpact> losses)
    {
        var table = new PageTable
        {
            Title = title,
            Columns = [("", 4), ("If this fails", 22), ("In-ear, main", 9), ("Feeds", 9), ("Lines", 9), ("Who goes silent", 31), ("Brought back", 16)],
        };
        var rank = 0;
        foreach (var loss in losses)
        {
            table.Rows.Add(
                new PageRow
                {
                    Cells =
                    [
                        PageLayout.Cell((++rank).ToString(CultureInfo.InvariantCulture)),
                        [new PageLine(ImpactWords.Things(loss.Lost), PageLineStyle.Strong)],
                        PageLayout.Cell(ImpactWords.Counted(loss, subject => subject.IsInEar || subject.Role == FeedRole.Main)),
                        PageLayout.Cell(ImpactWords.Counted(loss, subject => subject.Role is not null)),
                        PageLayout.Cell(ImpactWords.Counted(loss, subject => subject.Role is null)),
                        PageLayout.Cell([.. ImpactWords.Short(loss)]),
                        PageLayout.Cell(ImpactWords.Plan(loss)),
                    ],
                }
            );
        }

        return table;
    }

    private PageTable Sets()
    {
        var limit = answer.FailureSets[0].Limit.ToString(CultureInfo.InvariantCulture);
        var table = new PageTable
        {
            Title = $"What it takes to silence a protected feed and its backups (every set up to {limit} looked at)",
            Columns = [("Feed", 24), ("Smallest", 12), ("Any one of", 64)],
        };
        foreach (var sets in answer.FailureSets)
        {
            var smallest = sets.Sets.Where(set => set.Count == sets.Smallest).Select(ImpactWords.Things).ToArray();
            var larger = sets.Sets.Count - smallest.Length + sets.Omitted;
            table.Rows.Add(
                new PageRow
                {
                    Cells =
                    [
                        PageLayout.Strong(sets.Name),
                        PageLayout.Cell(sets.Smallest is { } size ? size.ToString(CultureInfo.InvariantCulture) : $"none up to {limit}"),
                        PageLayout.Cell(
                            smallest.Length == 0 ? $"No {limit} things together silence it." : string.Join("; ", smallest),
                            smallest.Length > 0 && larger > 0 ? $"and {PlainText.Count(larger, "further set")} up to size {limit}" : null
                        ),
                    ],
                }
            );
        }

        return table;
    }
}
