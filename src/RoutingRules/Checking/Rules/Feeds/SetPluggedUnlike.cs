using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports parts of a set that are patched alike and plugged unlike: one without a cable, two that cross, two at different numbers.</summary>
/// <remarks>
/// Two parts are patched alike when they stand on one device, or at one number of devices of one kind. Only outputs with one cable to loudspeakers
/// count. One finding for each pair of parts; entities are the feeds, then their outputs.
/// </remarks>
public sealed class SetPluggedUnlike : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3020",
            Name = "set-plugged-unlike",
            Title = "Parts of a set plugged unlike",
            Family = RuleFamily.Feeds,
            Severity = Severity.Warning,
            Checks =
                "Parts of a set that are patched alike are plugged alike: all of them go on to loudspeakers or none, in the same order on one device, "
                + "and to the same number of amplifiers of one kind.",
            Why = "The patch looks right on every screen, and the side with the odd plug is silent or plays where the other one should.",
            Remedy = "Look at the plug named, and put it where that of the other part is; or write down the cable that is there.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(0);
        foreach (var (_, feeds) in context.Cables.Count == 0 ? [] : FeedSets.Of(context))
        {
            for (var one = 0; one < feeds.Count; one++)
            {
                for (var other = one + 1; other < feeds.Count; other++)
                {
                    Compare(context, feeds[one], feeds[other]);
                }
            }
        }
    }

    private static void Compare(RuleContext context, FeedNode one, FeedNode other)
    {
        if (one.Width != 1 || other.Width != 1 || string.Equals(one.Model.Part, other.Model.Part, StringComparison.Ordinal))
        {
            return;
        }

        for (var entry = 0; entry < one.Model.To.Count && entry < other.Model.To.Count; entry++)
        {
            var (first, second) = (context.Demand(one, entry).Existing, context.Demand(other, entry).Existing);
            if (first.IsNone || second.IsNone || !ArePatchedAlike(context, first, second))
            {
                continue;
            }

            context.LookedAt();
            if (Fault(context, (one, first), (other, second)) is { } message)
            {
                context.Report(
                    message,
                    $"/feeds/{one.Index}/to/{entry}",
                    Entity.Of("feed", one.Model.Id),
                    Entity.Of("feed", other.Model.Id),
                    Entity.Of("output", context.Address(first)),
                    Entity.Of("output", context.Address(second))
                );
            }
        }
    }

    private static bool ArePatchedAlike(RuleContext context, PointIndex first, PointIndex second) =>
        context.GroupOf(first) is { Kind: PortKind.Output } one
        && context.GroupOf(second) is { Kind: PortKind.Output } other
        && one.Id == other.Id
        && (
            context.DeviceOf(first) == context.DeviceOf(second)
            || (context.DeviceOf(first).Profile.Kind == context.DeviceOf(second).Profile.Kind && context.NumberOf(first) == context.NumberOf(second))
        );

    private static string? Fault(RuleContext context, (FeedNode Feed, PointIndex Output) one, (FeedNode Feed, PointIndex Output) other)
    {
        var (plug, counterpart) = (Plugs(context, one.Output), Plugs(context, other.Output));
        return (plug.Count, counterpart.Count) switch
        {
            (0, 1) => Uncabled(context, one, other, counterpart[0]),
            (1, 0) => Uncabled(context, other, one, plug[0]),
            (1, 1) => Unlike(context, (one.Feed, one.Output, plug[0]), (other.Feed, other.Output, counterpart[0])),
            _ => null,
        };
    }

    /// <summary>The inputs directly behind an output from which loudspeakers play.</summary>
    private static List<PointIndex> Plugs(RuleContext context, PointIndex output)
    {
        var plugs = new List<PointIndex>();
        foreach (var next in context.Fed(output))
        {
            if (context.Via(new PointIndex(next)) == HopKind.Cable && context.Loudspeakers.Contains(new PointIndex(next)))
            {
                plugs.Add(new PointIndex(next));
            }
        }

        return plugs;
    }

    private static string? Uncabled(
        RuleContext context,
        (FeedNode Feed, PointIndex Output) bare,
        (FeedNode Feed, PointIndex Output) plugged,
        PointIndex plug
    ) =>
        context.Fed(bare.Output).IsEmpty && context.GroupOf(bare.Output).Model.Level != SignalLevel.Speaker
            ? $"No cable leads on from {context.Address(bare.Output)} ('{bare.Feed.DisplayName}'), while '{plugged.Feed.DisplayName}' goes on "
                + $"from {context.Address(plugged.Output)} to {context.Address(plug)}."
            : null;

    private static string? Unlike(
        RuleContext context,
        (FeedNode Feed, PointIndex Output, PointIndex Plug) one,
        (FeedNode Feed, PointIndex Output, PointIndex Plug) other
    )
    {
        var isOneDevice = context.DeviceOf(one.Output) == context.DeviceOf(other.Output);
        var isOneAmplifier = context.DeviceOf(one.Plug) == context.DeviceOf(other.Plug);
        if (isOneDevice != isOneAmplifier || !AreAlike(context, one.Plug, other.Plug))
        {
            return null;
        }

        var plugs =
            $"'{one.Feed.DisplayName}' from {context.Address(one.Output)} to {context.Address(one.Plug)} and "
            + $"'{other.Feed.DisplayName}' from {context.Address(other.Output)} to {context.Address(other.Plug)}";
        return !isOneDevice ? (context.NumberOf(one.Plug) == context.NumberOf(other.Plug) ? null : $"Plugged at different numbers: {plugs}.")
            : (one.Output < other.Output) == (one.Plug < other.Plug) ? null
            : $"The cables cross: {plugs}.";
    }

    private static bool AreAlike(RuleContext context, PointIndex one, PointIndex other) =>
        context.DeviceOf(one).Profile.Id == context.DeviceOf(other).Profile.Id && context.GroupOf(one).Index == context.GroupOf(other).Index;
}
