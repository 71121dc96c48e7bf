using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>The rig as the verifier sees it: devices, cables, marks and what must not be used.</summary>
internal sealed class RigFacts
{
    private readonly Dictionary<Id<Device>, DeviceFacts> byId = [];
    private readonly List<DeviceFacts> devices = [];
    private readonly Dictionary<Point, Point> outputAt = [];
    private readonly Dictionary<Point, List<Point>> inputsAt = [];
    private readonly Dictionary<Point, Point> carriedFrom = [];
    private readonly HashSet<Point> dead = [];
    private readonly HashSet<Point> reserved = [];
    private readonly HashSet<Point> excluded = [];
    private readonly HashSet<string> excludedIds = new(StringComparer.Ordinal);

    public RigFacts(Show show, Func<Id<DeviceProfile>, DeviceProfile?> profiles, ValueList<string> without)
    {
        Rig = show.Rig;
        foreach (var text in without)
        {
            if (PointRange.TryParse(text, out var range, out _))
                AddAll(excluded, range);
            else
                excludedIds.Add(text);
        }

        var inline = new Dictionary<Id<DeviceProfile>, DeviceProfile>();
        foreach (var profile in Rig.Profiles)
            inline.TryAdd(profile.Id, profile);

        foreach (var device in Rig.Devices)
        {
            var profile = inline.TryGetValue(device.Profile, out var own) ? own : profiles(device.Profile);
            var facts = new DeviceFacts(device, devices.Count, profile, excludedIds.Contains(device.Id.Value));
            if (byId.TryAdd(device.Id, facts))
                devices.Add(facts);
        }

        foreach (var device in devices)
            device.Build(SampleRate(device));

        foreach (var cable in Rig.Cables)
            AddCable(cable);

        foreach (var link in Rig.Links)
        {
            AddCarrier(link.From, link.To);
            AddCarrier(link.To, link.From);
        }

        foreach (var mark in Rig.Unavailable)
            AddAll(dead, mark.At);

        foreach (var mark in Rig.Reserved)
            AddAll(reserved, mark.At);
    }

    private void AddCarrier(PointRange sending, PointRange receiving)
    {
        if (
            sending.Width != 1
            || receiving.Width != 1
            || sending.Device == receiving.Device
            || OnJack(sending, PortKind.Transmit) is not { } transmit
            || OnJack(receiving, PortKind.Receive) is not { } receive
        )
        {
            return;
        }

        for (var number = 1; number <= transmit.Count && number <= receive.Count; number++)
            carriedFrom.TryAdd(receive.At(number), transmit.At(number));
    }

    private GroupFacts? OnJack(PointRange jack, PortKind kind) =>
        Exists(jack)
            ? Device(jack.Device)!
                .Groups.FirstOrDefault(group =>
                    group.Kind == kind && group.Model.Carrier is { } carrier && carrier.Group == jack.Group && carrier.First == jack.First
                )
            : null;

    public Rig Rig { get; }

    public IReadOnlyList<DeviceFacts> Devices => devices;

    public DeviceFacts? Device(Id<Device> id) => byId.GetValueOrDefault(id);

    public GroupFacts? Group(Point point) => Device(point.Device)?.Group(point.Group);

    public GroupFacts? Group(PointRange range) => Device(range.Device)?.Group(range.Group);

    public bool Exists(Point point) => Group(point) is { } group && point.Number <= group.Count;

    public bool Exists(PointRange range) => Group(range) is { } group && range.Last <= group.Count;

    public PortKind? Kind(Point point) => Exists(point) ? Group(point)!.Kind : null;

    /// <summary>The output that is cabled to an input.</summary>
    public Point? OutputCabledTo(Point input) => outputAt.TryGetValue(input, out var output) ? output : null;

    /// <summary>The transmit slot whose signal arrives at a receive slot over a link that is itself the stream.</summary>
    public Point? CarriedFrom(Point receive) => carriedFrom.TryGetValue(receive, out var transmit) ? transmit : null;

    /// <summary>The inputs an output is cabled to, in document order.</summary>
    public IReadOnlyList<Point> InputsCabledTo(Point output) => inputsAt.TryGetValue(output, out var inputs) ? inputs : [];

    public bool IsDead(Point point) => dead.Contains(point);

    public bool IsReserved(Point point) => reserved.Contains(point);

    public bool IsUsable(Point point) => !dead.Contains(point) && !reserved.Contains(point);

    public bool IsExcluded(Point point) => excluded.Contains(point) || IsExcluded(point.Device);

    public bool IsExcluded(Id<Device> device) => Device(device) is { IsExcluded: true };

    public bool IsExcluded(Link link) => excludedIds.Contains(link.Id.Value);

    /// <summary>Order of points: device, then group in the profile, then number.</summary>
    public int Compare(Point left, Point right)
    {
        var order = (Device(left.Device)?.Index ?? int.MaxValue).CompareTo(Device(right.Device)?.Index ?? int.MaxValue);
        if (order == 0)
            order = (Group(left)?.Index ?? int.MaxValue).CompareTo(Group(right)?.Index ?? int.MaxValue);

        return order == 0 ? left.Number.CompareTo(right.Number) : order;
    }

    /// <summary>True when a network reaches the device: by a link, or without any link by having a network jack.</summary>
    public bool IsOn(Network network, DeviceFacts device)
    {
        var hasLinks = false;
        foreach (var link in Rig.Links)
        {
            if (link.Network != network.Id || !Connects(link))
                continue;

            hasLinks = true;
            if ((link.From.Device == device.Model.Id || link.To.Device == device.Model.Id) && !IsCarrierJack(link.From) && !IsCarrierJack(link.To))
                return true;
        }

        return !hasLinks && HasJack(device);
    }

    /// <summary>True when a stream can leave or enter a device at all: by a network jack that is no multicore's.</summary>
    public static bool HasJack(DeviceFacts device) =>
        device.Groups.Any(group => group.Kind == PortKind.Network && group.Count > 0 && !IsCarrierJack(device, group.Model.Id));

    /// <summary>True for a link that joins two jacks of two devices on a network of the rig; any other is no link.</summary>
    public bool Connects(Link link) =>
        link.From.Width == 1
        && link.To.Width == 1
        && link.From.Device != link.To.Device
        && Kind(link.From[0]) == PortKind.Network
        && Kind(link.To[0]) == PortKind.Network
        && Rig.Networks.Any(network => network.Id == link.Network);

    private bool IsCarrierJack(PointRange jack) => Device(jack.Device) is { } device && IsCarrierJack(device, jack.Group);

    private static bool IsCarrierJack(DeviceFacts device, Id<PortGroup> jacks) =>
        device.Groups.Any(group => group.Model.Carrier is { } carrier && carrier.Group == jacks);

    /// <summary>The sample rate of what a device sends over a network: that of the network's clock, else the device's own.</summary>
    public int SampleRate(Network network, DeviceFacts? sender) => ClockOf(network)?.SampleRate ?? (sender is null ? OnlyRate : SampleRate(sender));

    // 48 kHz when the rig says nothing, or too much to tell.
    private int OnlyRate => Rig.Clocks.Count == 1 ? Rig.Clocks[0].SampleRate : 48_000;

    private Clock? ClockOf(Network network) => Rig.Clocks.FirstOrDefault(clock => clock.Id == network.Clock);

    // A device runs at the clock it leads or backs up, else at that of the first network it is linked to.
    private int SampleRate(DeviceFacts device)
    {
        var id = device.Model.Id;
        if (Rig.Clocks.FirstOrDefault(clock => clock.Leader == id || clock.Backup == id) is { } led)
            return led.SampleRate;

        foreach (var network in Rig.Networks)
        {
            if (ClockOf(network) is { } clock && Rig.Links.Any(link => link.Network == network.Id && (link.From.Device == id || link.To.Device == id)))
                return clock.SampleRate;
        }

        return OnlyRate;
    }

    private void AddCable(Cable cable)
    {
        if (cable.From.Width != cable.To.Width)
            return;

        for (var i = 0; i < cable.From.Width; i++)
        {
            var (from, to) = (cable.From[i], cable.To[i]);
            if (Kind(from) != PortKind.Output || Kind(to) != PortKind.Input || !outputAt.TryAdd(to, from))
                continue;

            if (!inputsAt.TryGetValue(from, out var inputs))
                inputsAt.Add(from, inputs = []);

            inputs.Add(to);
        }
    }

    private static void AddAll(HashSet<Point> set, PointRange range)
    {
        for (var i = 0; i < range.Width; i++)
            set.Add(range[i]);
    }
}
