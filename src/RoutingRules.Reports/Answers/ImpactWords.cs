using System.Globalization;
using System.Text.RegularExpressions;
using RoutingRules.Checking.Facts;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Reports.Answers;

/// <summary>The words of answers to what a loss does.</summary>
internal sealed partial class ImpactWords
{
    private const int MaxNames = 4;

    private readonly DemandNames names;
    private readonly Dictionary<string, Line> lines = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (Feed Feed, int Width)> feeds = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> labels = new(StringComparer.Ordinal);

    public ImpactWords(Show show)
    {
        names = new DemandNames(show);
        foreach (var line in show.Lines)
        {
            lines.TryAdd(line.Id.Value, line);
        }

        foreach (var feed in show.Feeds)
        {
            for (var entry = 1; entry <= feed.To.Count; entry++)
            {
                feeds.TryAdd(string.Create(CultureInfo.InvariantCulture, $"{feed.Id}/{entry}"), (feed, feed.Source.Width));
            }
        }

        foreach (var device in show.Rig.Devices)
        {
            labels.TryAdd(device.Id.Value, device.Label is null ? device.Id.Value : $"{device.Label} ({device.Id})");
        }
    }

    public static string Kind(LossKind kind) =>
        kind switch
        {
            LossKind.Device => "device",
            LossKind.Link => "link",
            LossKind.Cable => "cable",
            LossKind.Way => "way",
            LossKind.Power => "power",
            _ => "point",
        };

    public static string Thing(LostThing thing) =>
        thing.Kind switch
        {
            LossKind.Device => thing.Label is null ? thing.Id : $"{thing.Label} ({thing.Id})",
            LossKind.Link => $"link {thing.Id}",
            LossKind.Cable => $"cable {thing.Id}",
            LossKind.Way => $"all of {thing.Id}",
            LossKind.Power => $"supply {thing.Id}",
            _ => thing.Id,
        };

    public static string Things(ValueList<LostThing> things) => string.Join(" and ", things.Select(Thing));

    public string Device(Id<Device> id) => labels.GetValueOrDefault(id.Value, id.Value);

    public string Demand(string key) => names.Of(key);

    public Line? Line(string? key) => key is null ? null : lines.GetValueOrDefault(key);

    public Feed? Feed(string? key) => key is not null && feeds.TryGetValue(key, out var known) ? known.Feed : null;

    /// <summary>What falls silent in a few words: in-ear feeds, then mains, then other feeds, then lines.</summary>
    public static IEnumerable<string> Short(LossImpact loss)
    {
        foreach (var (title, some) in Groups(loss))
        {
            var named = some.Take(MaxNames)
                .Select(subject =>
                    subject.Name
                    + (
                        subject.Fate == LossFate.Partly ? " (in part)"
                        : subject.Fate == LossFate.BackedUp ? " (backed up)"
                        : ""
                    )
                );
            var more = some.Count > MaxNames ? string.Create(CultureInfo.InvariantCulture, $" and {some.Count - MaxNames} more") : "";
            yield return $"{title}: {string.Join(", ", named)}{more}";
        }
    }

    public static string Plan(LossImpact loss)
    {
        if (loss.Plan is not { } plan)
        {
            return "";
        }

        var steps = plan.Steps.IsEmpty ? "" : $" in {PlainText.Count(plan.Steps.Count, "step")}, {PlainText.Count(plan.Moves, "move")}";
        return plan.Recovered.IsEmpty ? "nothing"
            : plan.Unrecovered.IsEmpty ? $"all{steps}"
            : string.Create(CultureInfo.InvariantCulture, $"{plan.Recovered.Count} back, {plan.Unrecovered.Count} not{steps}");
    }

    public static string Fate(LostSubject subject) =>
        subject.Fate switch
        {
            LossFate.BackedUp => $"lost; {Wording.List(subject.Backups.ToArray())} goes on as its backup",
            LossFate.Partly => $"goes on at {Wording.List(subject.RemainsAt.Select(at => at.ToString()).ToArray())}",
            _ => "silent",
        };

    public static string Counted(LossImpact loss, Func<LostSubject, bool> isMeant)
    {
        var lost = loss.Subjects.Count(subject => isMeant(subject) && subject.Fate == LossFate.Lost);
        var other = loss.Subjects.Count(subject => isMeant(subject) && subject.Fate != LossFate.Lost);
        return other == 0 ? lost.ToString(CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{lost} (+{other} in part)");
    }

    /// <summary>Why something stays silent, without the point where it is the thing's own: who reads the card knows what failed.</summary>
    public static string Cause(string reason) =>
        Source().IsMatch(reason) ? "Its source is lost."
        : Sink().IsMatch(reason) ? "Where it arrives is lost."
        : reason;

    [GeneratedRegex(@"^Its source \S+ is lost\.$", RegexOptions.CultureInvariant)]
    private static partial Regex Source();

    [GeneratedRegex(@"^\S+ itself is lost\.$", RegexOptions.CultureInvariant)]
    private static partial Regex Sink();

    public static string Kept(LossImpact loss) =>
        string.Create(CultureInfo.InvariantCulture, $"{PlainText.Count(loss.FeedsKept, "feed")}, {PlainText.Count(loss.LinesKept, "line")}");

    public static List<(string Title, List<LostSubject> Subjects)> Groups(LossImpact loss) =>
        [
            .. loss
                .Subjects.GroupBy(subject =>
                    subject.Role is not { } role ? "Lines"
                    : subject.IsInEar ? "In-ear"
                    : role == FeedRole.Main ? "Main"
                    : "Other feeds"
                )
                .Select(group => (group.Key, group.ToList())),
        ];

    /// <summary>A feed or line with the person, what it is for and how much it matters.</summary>
    public static string Name(LostSubject subject)
    {
        var person = subject.Person is null ? "" : $" ({subject.Person})";
        var role = subject.Role is { } known && known != FeedRole.InEar && (known != FeedRole.Main || subject.IsInEar) ? $", {known}" : "";
        var priority = subject.Priority <= Priority.High ? $", {(subject.Priority == Priority.Critical ? "critical" : "high")}" : "";
        return $"{subject.Name}{person}{role}{priority}";
    }
}
