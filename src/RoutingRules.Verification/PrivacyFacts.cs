using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>What only crew and band may hear, and the points whose signal loudspeakers play without any patch.</summary>
internal sealed class PrivacyFacts
{
    private readonly RigFacts rig;
    private readonly HashSet<Point> hidden = [];
    private readonly HashSet<Id<Device>> trusted = [];
    private readonly Dictionary<Point, List<Point>> carriedTo = [];
    private readonly Dictionary<Point, bool> plays = [];

    public PrivacyFacts(Show show, RigFacts rig)
    {
        this.rig = rig;
        var heard = new HashSet<Point>();
        foreach (var feed in show.Feeds)
            (IsPrivate(feed) ? hidden : heard).UnionWith(Enumerable.Range(0, feed.Source.Width).Select(i => feed.Source[i]));

        hidden.ExceptWith(heard);
        foreach (var receive in rig.Devices.SelectMany(device => device.Groups).Where(group => group.Kind == PortKind.Receive).SelectMany(All))
        {
            if (rig.CarriedFrom(receive) is { } sent)
                (carriedTo.TryGetValue(sent, out var list) ? list : carriedTo[sent] = []).Add(receive);
        }
    }

    /// <summary>True for feeds that are no programme.</summary>
    public static bool IsPrivate(DemandFacts demand) => demand.Feed is { } feed && IsPrivate(feed);

    /// <summary>True for a source that nothing but such feeds has.</summary>
    public bool IsPrivate(Point source) => hidden.Contains(source);

    /// <summary>Says where pinned feeds stand: at a device with one of these the user has decided.</summary>
    public void Trust(IEnumerable<DemandFacts> demands) =>
        trusted.UnionWith(demands.Where(demand => IsPrivate(demand) && demand is { IsPinned: true, Runs.Count: > 0 }).Select(demand => demand.Runs[0].Device));

    /// <summary>True for a receive slot at which nothing private may arrive.</summary>
    public bool IsExposed(Point receive) => !trusted.Contains(receive.Device) && Plays(receive);

    /// <summary>True when loudspeakers play what a point carries, by cables and by what devices do by themselves.</summary>
    public bool Plays(Point point)
    {
        if (!plays.TryGetValue(point, out var known))
            plays.Add(point, known = Plays(point, []));

        return known;
    }

    // A way that comes round to where it was adds nothing.
    private bool Plays(Point point, HashSet<Point> passed) =>
        passed.Add(point) && rig.Group(point) is { } group && (IsLoudspeaker(group) || Next(group, point).Any(next => Plays(next, passed)));

    private static bool IsLoudspeaker(GroupFacts group) =>
        group.Kind switch
        {
            PortKind.Output => group.Model.Level == SignalLevel.Speaker,
            PortKind.Input => group.Device.IsKind(DeviceKind.Amplifier) || group.Device.IsKind(DeviceKind.Loudspeaker),
            PortKind.Receive => group.Device.IsKind(DeviceKind.Loudspeaker),
            _ => false,
        };

    private IEnumerable<Point> Next(GroupFacts group, Point point)
    {
        var inside = group.Device.Groups.SelectMany(to => Enumerable.Range(1, to.Count).Where(number => Before(to, number) == point).Select(to.At));
        return inside.Concat(rig.InputsCabledTo(point)).Concat(carriedTo.GetValueOrDefault(point) ?? []);
    }

    private static Point? Before(GroupFacts to, int number) =>
        to.FixedFrom is { } own
            ? (number <= own.Count ? own.At(number) : null)
            : to.FactorySource(number) ?? (to.ThroughFrom is { } through && number <= through.Count ? through.At(number) : null);

    private static bool IsPrivate(Feed feed) =>
        feed.Role == FeedRole.Talkback || feed.Role == FeedRole.Click || feed.Role == FeedRole.Comms || feed.Role.Value == "intercom";

    private static IEnumerable<Point> All(GroupFacts group) => Enumerable.Range(1, group.Count).Select(group.At);
}
