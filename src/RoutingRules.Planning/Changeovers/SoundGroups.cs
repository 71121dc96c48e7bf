using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Planning.Comparing;
using RoutingRules.Profiles;

namespace RoutingRules.Planning.Changeovers;

/// <summary>Groups points that are muted and opened together: the most delicate first, place by place.</summary>
internal sealed class SoundGroups(ShowComparer shows)
{
    /// <summary>The show that knows a point.</summary>
    public ShowSide SideOf(Point at) => shows.After.Graph.Find(at).IsNone ? shows.Before : shows.After;

    /// <summary>Points by how delicate they are, then by place.</summary>
    public IEnumerable<IGrouping<(SoundClass Class, Id<Device> Place), Point>> Of(IEnumerable<Point> points) =>
        points
            .OrderBy(ClassOf)
            .ThenBy(at => OrderOf(at.Device))
            .ThenBy(at => at.Device.Value, StringComparer.Ordinal)
            .ThenBy(at => SideOf(at).Graph.Find(at))
            .GroupBy(at => (ClassOf(at), at.Device));

    /// <summary>The more delicate one of what it serves before and after.</summary>
    private SoundClass ClassOf(Point at)
    {
        var old = ClassOf(shows.Before, at);
        var now = ClassOf(shows.After, at);
        return old < now ? old : now;
    }

    private static SoundClass ClassOf(ShowSide side, Point at)
    {
        var index = side.Graph.Find(at);
        if (side.LeadsToEars(index))
        {
            return SoundClass.Ears;
        }

        if (index.IsNone || (side.Graph.GroupOf(index).Kind == PortKind.Sink && !ShowSide.IsEnd(side.Show, index)))
        {
            return SoundClass.Channels;
        }

        var roles = side.FeedsAt(index).Select(feed => feed.Model.Role).ToList();
        return roles.Exists(FeedRoles.IsLoudspeaker) ? SoundClass.House
            : roles.Contains(FeedRole.Monitor) ? SoundClass.Monitors
            : side.Show.Loudspeakers.Contains(index) ? SoundClass.House
            : SoundClass.Others;
    }

    /// <summary>Where a place stands: as in the show after, then as in the one before, then work without a place.</summary>
    public int OrderOf(Id<Device>? place) =>
        place is not { } id
            ? int.MaxValue
            : shows.After.Graph.Device(id)?.Index ?? shows.After.Show.Devices.Count + (shows.Before.Graph.Device(id)?.Index ?? 0);
}
