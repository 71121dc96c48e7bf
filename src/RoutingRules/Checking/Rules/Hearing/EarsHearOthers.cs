using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Hearing;

/// <summary>Reports people whose ears hear somebody else's mix.</summary>
/// <remarks>
/// By pins: where an in-ear feed is pinned, the mix of another one arrives. By packs, a warning: mixes end, all round, at
/// inputs that the panel marks with each other's packs. One finding for all who are mixed up with each other; whole runs that are displaced have their own
/// rule.
/// </remarks>
public sealed class EarsHearOthers : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR9005",
            Name = "ears-hear-others",
            Title = "Somebody hears somebody else's in-ear mix",
            Family = RuleFamily.Hearing,
            Severity = Severity.Error,
            Severities = [Severity.Error, Severity.Warning],
            Checks =
                "Where an in-ear feed is pinned in somebody's ears, no other in-ear mix arrives; and in-ear mixes do not end at each other's "
                + "packs, as the panel marks them (a warning).",
            Why = "Each mix is loud in what its own listener needs: the drummer's mix in a singer's ears is a shock, and nobody at the console hears it.",
            Remedy =
                "Mute these transmitters, exchange the cables at the rack, or the routes where the cables are right, and listen on each pack, low, "
                + "with its name in hand, before a performer wears it.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var heard = EarMixes.Of(context).Heard;
        context.LookedAt(context.Ears.All.Count == 0 ? 0 : EarFeeds.Of(context).Count);
        var open = new List<EarMixes.Hearing>(heard);
        while (open.Count > 0)
        {
            var feeds = new HashSet<FeedNode> { open[0].Listener, open[0].Mix };
            var group = new List<EarMixes.Hearing>();
            while (open.FindIndex(one => feeds.Contains(one.Listener) || feeds.Contains(one.Mix)) is >= 0 and var next)
            {
                feeds.Add(open[next].Listener);
                feeds.Add(open[next].Mix);
                group.Add(open[next]);
                open.RemoveAt(next);
            }

            group.Sort(static (x, y) => x.At.CompareTo(y.At));
            Report(context, group);
        }
    }

    private static void Report(RuleContext context, List<EarMixes.Hearing> group)
    {
        var parts = group.ConvertAll(one => $"{EarWords.Listener(one.Listener)} hears '{one.Mix.DisplayName}' at {EarWords.At(context, one.At, one.Width)}");
        var first = group[0].Listener;
        context.ReportAs(
            group.Exists(one => one.IsPinned) ? Severity.Error : Severity.Warning,
            $"In-ear mixes are mixed up: {Wording.List(parts)}.",
            $"/feeds/{first.Index}",
            [
                .. group.Select(one => Entity.Of("input", context.Address(one.At, one.Width))),
                .. group.SelectMany(one => new[] { one.Listener.Model.Id, one.Mix.Model.Id }).Distinct().Order().Select(id => Entity.Of("feed", id)),
            ]
        );
    }
}
