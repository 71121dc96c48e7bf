using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Documents;

/// <summary>Reports feeds of one name, and lines of one name.</summary>
/// <remarks>
/// Capitals and spaces aside. The parts of one set and a feed with its backup may share a name. One finding for each name; entities are the feeds or lines.
/// </remarks>
public sealed class NameDoubled : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR1111",
            Name = "name-doubled",
            Title = "Two feeds or two lines of one name",
            Family = RuleFamily.Document,
            Severity = Severity.Note,
            Checks = "No two feeds and no two lines have the same name, capitals and spaces aside, except for the parts of a set and a feed with its backup.",
            Why = "On the sheet and over the intercom one of them is taken for the other.",
            Remedy = "Say in the name what tells them apart: the side, the number, the player.",
            Source = "common practice, no source",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var feeds = new Dictionary<string, List<FeedNode>>(StringComparer.Ordinal);
        foreach (var feed in context.Feeds)
        {
            Add(context, feeds, feed.Model.Name, feed);
        }

        foreach (var same in feeds.Values)
        {
            var doubled = same.Count < 2 ? same : same.FindAll(one => same.Exists(other => other != one && !MayShare(one, other)));
            if (doubled.Count > 1)
            {
                doubled.Sort(static (x, y) => x.Model.Id.CompareTo(y.Model.Id) is var order and not 0 ? order : x.Index.CompareTo(y.Index));
                Report(context, "feed", "/feeds", doubled.ConvertAll(feed => (feed.Model.Id.Value, feed.Model.Name!, feed.Index)));
            }
        }

        var lines = new Dictionary<string, List<LineNode>>(StringComparer.Ordinal);
        foreach (var line in context.Lines)
        {
            Add(context, lines, line.Model.Name, line);
        }

        foreach (var same in lines.Values)
        {
            if (same.Count > 1)
            {
                same.Sort(static (x, y) => x.Model.Id.CompareTo(y.Model.Id) is var order and not 0 ? order : x.Index.CompareTo(y.Index));
                Report(context, "line", "/lines", same.ConvertAll(line => (line.Model.Id.Value, line.Model.Name!, line.Index)));
            }
        }
    }

    private static void Add<TNode>(RuleContext context, Dictionary<string, List<TNode>> names, string? name, TNode node)
    {
        if (name is not null && LabelText.Normal(name) is { Length: > 0 } normal)
        {
            context.LookedAt();
            (names.TryGetValue(normal, out var known) ? known : names[normal] = []).Add(node);
        }
    }

    private static bool MayShare(FeedNode one, FeedNode other) =>
        one.Model.BackupOf == other.Model.Id
        || other.Model.BackupOf == one.Model.Id
        || (one.Model.Set is { } set && set == other.Model.Set && one.Model.Part != other.Model.Part);

    private static void Report(RuleContext context, string what, string list, List<(string Id, string Name, int Index)> same) =>
        context.Report(
            $"{same.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)} {what}s have the name '{same[0].Name}': "
                + $"{Wording.Names(same.ConvertAll(one => one.Id), false)}.",
            $"{list}/{same.Max(one => one.Index).ToString(System.Globalization.CultureInfo.InvariantCulture)}/name",
            [.. same.ConvertAll(one => Entity.Of(what, one.Id))]
        );
}
