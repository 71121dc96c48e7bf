using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Tests.Promises;

/// <summary>
/// Follows a signal by the document alone, one question at a time: which entry of the document feeds this point? Slow and plain on purpose, and
/// shares nothing with the signal graph. Profiles must be written into the rig, and all devices run at one rate.
/// </summary>
internal sealed class NaiveTracer(Show show)
{
    private readonly int rate = show.Rig.Clocks.Count > 0 ? show.Rig.Clocks[0].SampleRate : 48_000;

    /// <summary>Follows a point upstream.</summary>
    /// <returns>How it ends, and all points passed, the point itself first; the last one is the source when there is one.</returns>
    public (TraceEnd End, List<Point> Passed) Trace(Point at)
    {
        var passed = new List<Point> { at };
        while (true)
        {
            var (isSource, from) = Feeder(passed[^1]);
            if (from is not { } next)
            {
                return (isSource ? TraceEnd.Source : TraceEnd.Silent, passed);
            }

            if (passed.Contains(next))
            {
                return (TraceEnd.Loop, passed);
            }

            passed.Add(next);
        }
    }

    /// <summary>The real source of a point, or null.</summary>
    public Point? Source(Point at) => Trace(at) is (TraceEnd.Source, var passed) ? passed[^1] : null;

    /// <summary>True when all points of a run exist.</summary>
    public bool Exists(PointRange run) => Kind(run) is not null;

    public IEnumerable<Point> Points(params PortKind[] kinds) =>
        from device in show.Rig.Devices
        from @group in Profile(device)?.PortGroups.ToArray() ?? []
        where kinds.Length == 0 || kinds.Contains(@group.Kind)
        from number in Enumerable.Range(1, Count(@group))
        select new Point(device.Id, @group.Id, number);

    /// <summary>What feeds a point directly; when nothing does, whether it is a source itself.</summary>
    private (bool IsSource, Point? From) Feeder(Point at)
    {
        var profile = ProfileOf(at.Device)!;
        var group = Group(at.Device, at.Group)!;
        switch (group.Kind)
        {
            case PortKind.Network:
                return (false, null);
            case PortKind.Input:
                return ByCable(at) is { } output ? (false, output) : (true, null);
            case PortKind.Receive:
                return (false, group.Carrier is { } carrier ? ByLink(at, carrier) : ByStream(at));
            default:
                var paths = profile.Through.Where(path => path.To == at.Group).ToArray();
                if (paths.Any(path => path.Kind == ThroughKind.Select))
                {
                    return (true, null);
                }

                return paths.Length > 0 ? (false, Opposite(at, paths[0].From))
                    : group.Kind == PortKind.Source ? (true, null)
                    : (false, ByRouting(at, profile));
        }
    }

    private Point? ByRouting(Point at, DeviceProfile profile)
    {
        var claims = show
            .Patch.Routes.Where(route => Covers(route.To, at) && IsSound(route))
            .Select(route => route.From is { } from ? Point(from, at.Number - route.To.First) : (Point?)null)
            .ToArray();
        if (profile.Routing.FirstOrDefault(entry => entry.To == at.Group && entry.Mode == RoutingMode.Fixed) is { } own)
        {
            var source = Opposite(at, own.From);
            var heeded = own.Clearable ? claims.Where(claim => claim is null || claim == source).ToArray() : [];
            return heeded.Length > 0 ? heeded[0] : source;
        }

        if (claims.Length > 0)
        {
            return claims[0];
        }

        var factory = profile.FactoryRoutes.FirstOrDefault(route => route.To.Group == at.Group && route.To.First <= at.Number && at.Number <= route.To.Last);
        return factory is null ? null : new Point(at.Device, factory.From.Group, factory.From.First + at.Number - factory.To.First);
    }

    private Point? ByCable(Point at)
    {
        foreach (var cable in show.Rig.Cables)
        {
            if (Covers(cable.To, at) && cable.From.Width == cable.To.Width && Kind(cable.From) == PortKind.Output && Kind(cable.To) == PortKind.Input)
            {
                return Point(cable.From, at.Number - cable.To.First);
            }
        }

        return null;
    }

    /// <summary>Receiver a..b that takes channels x..y: receive slot a + k takes stream channel x + k, and channel c is transmit slot first + c - 1.</summary>
    private Point? ByStream(Point at)
    {
        foreach (var stream in show.Patch.Streams)
        {
            foreach (var receiver in stream.To)
            {
                var (first, last) = receiver.Channels is { } channels ? (channels.First, channels.Last) : (1, stream.From.Width);
                if (
                    Covers(receiver.At, at)
                    && Kind(stream.From) == PortKind.Transmit
                    && !IsCarrier(stream.From)
                    && Kind(receiver.At) == PortKind.Receive
                    && last <= stream.From.Width
                    && last - first + 1 == receiver.At.Width
                )
                {
                    var channel = first + at.Number - receiver.At.First;
                    return new Point(stream.From.Device, stream.From.Group, stream.From.First + channel - 1);
                }
            }
        }

        return null;
    }

    /// <summary>The slot of the same number on the jack at the other end of the link.</summary>
    private Point? ByLink(Point at, GroupRange jack)
    {
        foreach (var link in show.Rig.Links)
        {
            if (Kind(link.From) != PortKind.Network || Kind(link.To) != PortKind.Network || link.From.Device == link.To.Device)
            {
                continue;
            }

            var here = new PointRange(at.Device, jack.Group, jack.First, jack.Last);
            var far =
                link.From == here ? link.To
                : link.To == here ? link.From
                : default;
            var sender =
                far.Width == 0
                    ? null
                    : ProfileOf(far.Device)!
                        .PortGroups.FirstOrDefault(group =>
                            group.Kind == PortKind.Transmit && group.Carrier is { } carrier && carrier.Group == far.Group && carrier.First == far.First
                        );
            if (sender is not null && at.Number <= Count(sender))
            {
                return new Point(far.Device, sender.Id, at.Number);
            }
        }

        return null;
    }

    private bool IsSound(Route route) =>
        Kind(route.To) is PortKind.Sink or PortKind.Output or PortKind.Transmit
        && (
            route.From is not { } from
            || (from.Device == route.To.Device && from.Width == route.To.Width && Kind(from) is PortKind.Source or PortKind.Input or PortKind.Receive)
        );

    /// <summary>The point at the same position of another group, or null beyond its end.</summary>
    private Point? Opposite(Point at, Id<PortGroup> group) => at.Number <= Count(Group(at.Device, group)!) ? new Point(at.Device, group, at.Number) : null;

    private static bool Covers(PointRange range, Point at) =>
        range.Device == at.Device && range.Group == at.Group && range.First <= at.Number && at.Number <= range.Last;

    private static Point Point(PointRange range, int position) => new(range.Device, range.Group, range.First + position);

    /// <summary>The kind of the group of a run, or null when the run is not all there.</summary>
    private PortKind? Kind(PointRange range) => Group(range.Device, range.Group) is { } group && range.Last <= Count(group) ? group.Kind : null;

    private bool IsCarrier(PointRange range) => Group(range.Device, range.Group)!.Carrier is not null;

    private int Count(PortGroup group) => group.Count ?? group.CountByRate.FirstOrDefault(entry => entry.SampleRate == rate)?.Count ?? 0;

    private PortGroup? Group(Id<Device> device, Id<PortGroup> id) => ProfileOf(device)?.PortGroups.FirstOrDefault(group => group.Id == id);

    private DeviceProfile? ProfileOf(Id<Device> id) => show.Rig.Devices.FirstOrDefault(device => device.Id == id) is { } device ? Profile(device) : null;

    private DeviceProfile? Profile(Device device) => show.Rig.Profiles.FirstOrDefault(profile => profile.Id == device.Profile);
}
