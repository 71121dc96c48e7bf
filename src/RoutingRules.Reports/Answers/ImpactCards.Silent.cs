using RoutingRules.Checking.Facts;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Sheets;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <content>Who falls silent, who pays, and who stays silent.</content>
internal sealed partial class ImpactCards
{
    private const int MaxNames = 40;

    /// <summary>More names than these stand on a card once, where it says what becomes of them.</summary>
    private const int FewNames = 6;

    /// <summary>What went on and gives up its place, for what, and who hears nothing for it; what brings back ears and mains first.</summary>
    private PageTable Payers(LossImpact loss, FallbackPlan plan)
    {
        var table = new PageTable
        {
            Title = "Who pays: tell whoever hears it before you pull it",
            RowColumns = 2,
            Columns = [("Falls silent", 34), ("Where", 22, "gives up "), ("For", 24, "for "), ("Who hears nothing", 20, "silent for ")],
        };
        table.Rows.AddRange(
            plan.Displaced.OrderBy(displaced => Rank(loss, displaced.By))
                .Select(displaced => new PageRow
                {
                    Cells =
                    [
                        PageLayout.Strong(words.Demand(displaced.Demand)),
                        PageLayout.Cell(displaced.At.ToString()),
                        PageLayout.Cell($"{words.Demand(displaced.By)}, which matters more"),
                        PageLayout.Cell(Listeners(displaced.Demand)),
                    ],
                })
        );
        return table;
    }

    /// <summary>Ears, mains, other feeds, lines.</summary>
    private int Rank(LossImpact loss, string? demand) =>
        IsInEar(loss, demand) ? 0
        : words.Feed(demand) is not { } feed ? 3
        : feed.Role == FeedRole.InEar ? 0
        : feed.Role == FeedRole.Main ? 1
        : 2;

    /// <summary>Who listens to a feed: the person, else the place, else what it is for.</summary>
    private string? Listeners(string demand) => words.Feed(demand) is { } feed ? feed.Person ?? feed.Position ?? feed.Role.Value : null;

    /// <summary>Who hears it first: in-ear feeds, then mains, then other feeds, then lines. Names alone fall silent; what is left of others is said.</summary>
    private PageTable Silenced(LossImpact loss)
    {
        var table = new PageTable { Title = "Goes silent", Columns = [("", 16), ("Who", 84)] };
        foreach (var (title, subjects) in ImpactWords.Groups(loss))
        {
            var lost = subjects.Where(subject => subject.Fate == LossFate.Lost).Select(ImpactWords.Name).ToArray();
            if (loss.Plan is not null && (title is "Lines" or "Other feeds") && lost.Length > FewNames)
            {
                lost = [$"{PlainText.Count(lost.Length, title == "Lines" ? "line" : "feed")}, named below: checked or staying silent"];
            }

            var others = subjects
                .Where(subject => subject.Fate != LossFate.Lost)
                .GroupBy(subject => title == "Lines" && subject.Fate == LossFate.Partly ? Remains(subject) : ImpactWords.Fate(subject), StringComparer.Ordinal)
                .Select(alike => $"{string.Join(", ", alike.Select(ImpactWords.Name))}: {alike.Key}")
                .ToArray();
            table.Rows.Add(
                new PageRow
                {
                    Cells =
                    [
                        PageLayout.Strong(title),
                        title is "Lines" or "Other feeds" ? DevicePages.Notes(Texts(lost, others)) : PageLayout.Cell(Texts(lost, others)),
                    ],
                }
            );
        }

        return table;
    }

    /// <summary>The devices at which a line still arrives; its channels are as they were.</summary>
    private string Remains(LostSubject subject) => $"goes on at {Wording.List(subject.RemainsAt.Select(at => words.Device(at.Device)).Distinct().ToArray())}";

    private static string?[] Texts(string[] lost, string[] others) =>
        [lost.Length == 0 ? null : $"{string.Join("; ", lost)}.", others.Length == 0 ? null : $"{string.Join("; ", others)}."];

    /// <summary>
    /// One row for each reason, as a whole system often stays silent for one: ears first, then mains; so many names in a row that a page holds it.
    /// </summary>
    private void AddSilent(Page page, LossImpact loss, FallbackPlan plan)
    {
        var table = new PageTable { Title = "Stays silent", Columns = [("What, for whom", 60), ("Why", 40)] };
        foreach (
            var alike in plan
                .Unrecovered.GroupBy(unrecovered => ImpactWords.Cause(unrecovered.Reason), StringComparer.Ordinal)
                .OrderBy(alike => alike.Min(unrecovered => Rank(loss, unrecovered.Demand)))
        )
        {
            foreach (
                var some in alike
                    .GroupBy(unrecovered => unrecovered.Demand, StringComparer.Ordinal)
                    .OrderBy(demand => Rank(loss, demand.Key))
                    .Select(demand => (Rank: Rank(loss, demand.Key), Name: Name(demand.Key), At: SilentAt(demand.Key, [.. demand])))
                    .Chunk(MaxNames)
            )
            {
                table.Rows.Add(
                    new PageRow
                    {
                        Cells =
                        [
                            [
                                .. some.GroupBy(demand => (demand.Rank, demand.At))
                                    .SelectMany(rank =>
                                    {
                                        var text = $"{Classes[rank.Key.Rank]}{rank.Key.At}: {string.Join("; ", rank.Select(demand => demand.Name))}.";
                                        return rank.Key.Rank < 2 ? PageLayout.Cell(text) : DevicePages.Notes(text);
                                    }),
                            ],
                            DevicePages.Notes(alike.Key),
                        ],
                    }
                );
            }
        }

        AddFilled(page, table);
    }

    private static readonly string[] Classes = ["In-ear", "Main", "Other feeds", "Lines"];

    /// <summary>A feed or line, and who hears it.</summary>
    private string Name(string demand) => words.Feed(demand)?.Person is { } who ? $"{words.Demand(demand)} ({who})" : words.Demand(demand);

    /// <summary>The devices at which a line stays silent, where it is not all of them; empty for all.</summary>
    private string SilentAt(string demand, UnrecoveredDemand[] at)
    {
        var sinks = at.Where(unrecovered => unrecovered.Sink is not null).Select(unrecovered => unrecovered.Sink!.Value).ToArray();
        return sinks.Length == 0 || sinks.Length == words.Line(demand)?.To.Count
            ? ""
            : $" at {Wording.List(sinks.Select(sink => words.Device(sink.Device)).Distinct().ToArray())}";
    }
}
