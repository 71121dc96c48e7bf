using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>Short ways to write shows in tests; everything returns plain model records to be changed by <c>with</c>.</summary>
public static class SmallShow
{
    /// <summary>A show with devices on one network without links, with the small profiles written into it.</summary>
    /// <param name="devices">Pairs such as <c>("desk", SmallProfiles.Console)</c>.</param>
    public static Show Of(params (string Id, DeviceProfile Profile)[] devices)
    {
        ArgumentNullException.ThrowIfNull(devices);
        return new Show
        {
            Title = "Test",
            Rig = new Rig
            {
                Networks =
                [
                    new()
                    {
                        Id = new("net"),
                        Transport = Transport.RtpL24,
                        PacketMicroseconds = 1000,
                    },
                ],
                Devices = devices.Select(device => new Device { Id = new(device.Id), Profile = device.Profile.Id }).ToValueList(),
                Profiles = devices.Select(device => device.Profile).DistinctBy(profile => profile.Id).ToValueList(),
            },
        };
    }

    /// <summary>An address.</summary>
    public static PointRange At(string address) => PointRange.Parse(address);

    /// <summary>A route; a null source clears.</summary>
    public static Route Route(string? from, string to) => new() { From = from is null ? null : At(from), To = At(to) };

    /// <summary>A cable.</summary>
    public static Cable Cable(string from, string to) => new() { From = At(from), To = At(to) };

    /// <summary>A stream on network <c>net</c> whose receivers take all channels.</summary>
    public static AudioStream Stream(string id, string from, params string[] to) =>
        new()
        {
            Id = new(id),
            Network = new("net"),
            From = At(from),
            To = to.Select(receiver => new StreamReceiver { At = At(receiver) }).ToValueList(),
        };

    /// <summary>A feed to pinned points, one entry each.</summary>
    public static Feed Feed(string id, FeedRole role, string source, params string[] at) =>
        new()
        {
            Id = new(id),
            Role = role,
            Source = At(source),
            To = at.Select(point => new Destination { At = At(point) }).ToValueList(),
        };

    /// <summary>A feed to any of some devices, one entry for each device.</summary>
    public static Feed FeedTo(string id, FeedRole role, string source, params string[] devices) =>
        new()
        {
            Id = new(id),
            Role = role,
            Source = At(source),
            To = devices.Select(device => new Destination { Devices = [new(device)] }).ToValueList(),
        };

    /// <summary>A microphone line from pinned inputs to sinks.</summary>
    public static Line Line(string id, string from, params string[] to) =>
        new()
        {
            Id = new(id),
            Kind = LineKind.Microphone,
            Width = At(from).Width,
            From = new() { At = [At(from)] },
            To = to.Select(At).ToValueList(),
        };

    /// <summary>The show with another patch.</summary>
    public static Show With(this Show show, params Route[] routes) =>
        (show ?? throw new ArgumentNullException(nameof(show))) with
        {
            Patch = show.Patch with { Routes = routes.ToValueList() },
        };

    /// <summary>The show with other streams.</summary>
    public static Show With(this Show show, params AudioStream[] streams) =>
        (show ?? throw new ArgumentNullException(nameof(show))) with
        {
            Patch = show.Patch with { Streams = streams.ToValueList() },
        };
}
