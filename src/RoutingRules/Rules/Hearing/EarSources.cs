using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>What must not sound in somebody's ears, and where it does.</summary>
internal static class EarSources
{
    /// <summary>What a source is, in words, when it must not reach an in-ear feed that did not ask for it; null when it may.</summary>
    public static string? Danger(RuleContext context, Intentions intentions, PointIndex source)
    {
        var isMain = false;
        foreach (var (_, feed) in intentions.FeedsOf(source))
        {
            if (feed.Model.Role == FeedRole.InEar)
            {
                return null;
            }

            isMain |= feed.Model.Role == FeedRole.Main;
        }

        return isMain ? "the main mix"
            : ForbiddenContent.IsPrivateBus(intentions, source) ? "talkback, click or comms"
            : context.GroupOf(source).Kind == PortKind.Input ? "an input without any mix"
            : null;
    }

    /// <summary>The dangerous source at a pinned in-ear feed that is missing there; none when there is none.</summary>
    public static PointIndex At(RuleContext context, Intentions intentions, DemandNode demand, out int position)
    {
        for (position = 0; demand is { IsPinned: true, Existing.IsNone: true, Feed: { } feed, Allowed.Count: > 0 } && feed.Model.Role == FeedRole.InEar && position < demand.Width; position++)
        {
            var point = demand.Allowed[0] + position;
            var origin = context.Origin(point);
            if (!origin.IsNone && origin != point && !context.IsFedBy(point, feed.Source + position) && Danger(context, intentions, origin) is not null)
            {
                return origin;
            }
        }

        return PointIndex.None;
    }

    /// <summary>Inputs of in-ear transmitters that carry a dangerous source although no feed has it there, in ascending order.</summary>
    public static List<(PointIndex Input, PointIndex Source)> AtRacks(RuleContext context, Intentions intentions)
    {
        var found = new List<(PointIndex Input, PointIndex Source)>();
        foreach (var device in context.Devices)
        {
            foreach (var group in device.Profile.Kind == DeviceKind.TransmitterRack ? device.Groups : [])
            {
                for (var i = 0; group.Kind == PortKind.Input && i < group.Count; i++)
                {
                    var input = device.First(group) + i;
                    var origin = context.Origin(input);
                    if (!origin.IsNone && origin != input && !IsPlace(context, intentions, input) && Danger(context, intentions, origin) is not null)
                    {
                        found.Add((input, origin));
                    }
                }
            }
        }

        return found;
    }

    /// <summary>True when a feed is placed or pinned on the way to an input, so that it is judged there.</summary>
    private static bool IsPlace(RuleContext context, Intentions intentions, PointIndex input)
    {
        for (var point = input; !point.IsNone; point = context.Upstream(point))
        {
            if (context.DemandAt(point)?.Feed is not null || intentions.IsFeedPin(point))
            {
                return true;
            }
        }

        return false;
    }
}
