using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Hearing;

/// <summary>Reports packs and people that are in two in-ear feeds at once.</summary>
/// <remarks>
/// A mix and its backup, one bus in two feeds (a spare pack) and the sides of one set are exempt. One finding for each pack, and one for each person whose
/// packs differ or are not named.
/// </remarks>
public sealed class ListenerDoubled : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR9007",
            Name = "listener-doubled",
            Title = "One pack or one person in two in-ear mixes",
            Family = RuleFamily.Hearing,
            Severity = Severity.Error,
            Severities = [Severity.Error, Severity.Warning],
            Checks =
                "No two in-ear feeds with different buses name the same pack, an error, or the same person, a warning; a backup and the sides of "
                + "one set aside.",
            Why = "A pack hears one transmitter: whoever wears it gets the other mix or none. A person with two mixes may put in the wrong one.",
            Remedy = "Give each feed the pack and the person that it is for. For a spare pack write the same bus, or name the feed that it backs up.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var ears = EarFeeds.Of(context);
        var byPack = new SortedDictionary<string, List<FeedNode>>(StringComparer.OrdinalIgnoreCase);
        var byPerson = new SortedDictionary<string, List<FeedNode>>(StringComparer.OrdinalIgnoreCase);
        foreach (var feed in context.Feeds)
        {
            if ((feed.Model.Pack ?? feed.Model.Person) is not null && ears.IsInEar(feed))
            {
                context.LookedAt();
                Add(byPack, feed.Model.Pack, feed);
                Add(byPerson, feed.Model.Person, feed);
            }
        }

        foreach (var feeds in byPack.Values)
        {
            if (feeds.Count > 1 && Doubled(feeds, static (_, _) => true) is { Count: > 1 } doubled)
            {
                var names = doubled.ConvertAll(feed => $"'{feed.DisplayName}'{(feed.Model.Person is { } person ? $" ({person})" : "")}");
                Report(
                    context,
                    Severity.Error,
                    $"Pack {doubled[0].Model.Pack!.Trim()} is in {doubled.Count} in-ear feeds at once, {Wording.List(names)}: it can hear only one of them.",
                    "pack",
                    doubled[0].Model.Pack!,
                    doubled
                );
            }
        }

        foreach (var feeds in byPerson.Values)
        {
            if (feeds.Count > 1 && Doubled(feeds, static (one, other) => !Same(one.Model.Pack, other.Model.Pack)) is { Count: > 1 } doubled)
            {
                var names = doubled.ConvertAll(feed => $"'{feed.DisplayName}'{(feed.Model.Pack is { } pack ? $" (pack {pack})" : "")}");
                Report(
                    context,
                    Severity.Warning,
                    $"{doubled[0].Model.Person!.Trim()} is in {doubled.Count} in-ear feeds with different mixes, {Wording.List(names)}: nothing "
                        + "says which one to wear.",
                    "person",
                    doubled[0].Model.Person!,
                    doubled
                );
            }
        }
    }

    private static void Report(RuleContext context, Severity severity, string message, string role, string id, List<FeedNode> feeds) =>
        context.ReportAs(
            severity,
            message,
            $"/feeds/{feeds[^1].Index}/{role}",
            [Entity.Of(role, id.Trim()), .. feeds.Select(feed => Entity.Of("feed", feed.Model.Id))]
        );

    /// <summary>The feeds that cannot go with another of the list, by id.</summary>
    private static List<FeedNode> Doubled(List<FeedNode> feeds, Func<FeedNode, FeedNode, bool> counts)
    {
        var doubled = feeds.FindAll(one => feeds.Exists(other => other != one && !EarListeners.MayShare(one, other) && counts(one, other)));
        doubled.Sort(static (x, y) => x.Model.Id.CompareTo(y.Model.Id) is var order and not 0 ? order : x.Index.CompareTo(y.Index));
        return doubled;
    }

    private static void Add(SortedDictionary<string, List<FeedNode>> table, string? name, FeedNode feed)
    {
        if (!string.IsNullOrWhiteSpace(name))
        {
            (table.TryGetValue(name.Trim(), out var known) ? known : table[name.Trim()] = []).Add(feed);
        }
    }

    private static bool Same(string? one, string? other) =>
        one is not null && other is not null && string.Equals(one.Trim(), other.Trim(), StringComparison.OrdinalIgnoreCase);
}
