using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>Takes out of a show what names something that is no longer there, so that a smaller show stays valid.</summary>
internal static class ShowTidier
{
    public static Show Tidy(Show show)
    {
        var rig = Tidy(show.Rig);
        var view = new RigView(rig);
        var feeds = show
            .Feeds.Where(feed => Fits(feed.Source))
            .Select(feed => feed with { To = Destinations(feed.To) })
            .Where(feed => !feed.To.IsEmpty)
            .ToArray();
        return show with
        {
            Rig = rig,
            Feeds = feeds
                .Select(feed =>
                    feed with
                    {
                        SeparateFrom = [.. feed.SeparateFrom.Where(separation => HasFeed(separation.Feed))],
                        BackupOf = feed.BackupOf is { } other && HasFeed(other) ? other : null,
                    }
                )
                .ToValueList(),
            Lines = [.. show.Lines.Select(Tidied).Where(line => !line.To.IsEmpty && HasOrigin(line.From))],
            Patch = show.Patch with
            {
                Streams =
                [
                    .. show
                        .Patch.Streams.Where(stream => rig.Networks.Any(network => network.Id == stream.Network) && IsBlock(stream.From))
                        .Select(stream =>
                            stream with
                            {
                                To = [.. stream.To.Where(receiver => IsOnGrid(receiver) && view.Reaches(stream.From.Device, receiver.At.Device))],
                            }
                        )
                        .Select(stream => stream with { Keep = stream.Keep && !stream.To.IsEmpty }),
                ],
                Routes = [.. show.Patch.Routes.Where(route => Fits(route.To) && (route.From is not { } from || Fits(from)) && IsAllowed(view, route))],
                Inputs = [.. show.Patch.Inputs.Where(input => Fits(input.At) && (input.GainOwner is not { } owner || HasDevice(owner)))],
                Labels = [.. show.Patch.Labels.Where(label => Fits(label.At))],
            },
        };

        bool Fits(PointRange range) => view.Group(range) is not null;

        bool IsBlock(PointRange slots) => view.Group(slots) is { } sender && slots.Width == sender.BlockSize && StartsBlock(sender.BlockSize, slots.First);

        bool IsOnGrid(StreamReceiver receiver) =>
            view.Group(receiver.At) is { } group
            && receiver.At.Width % group.BlockSize == 0
            && StartsBlock(group.BlockSize, receiver.At.First)
            && StartsBlock(group.BlockSize, receiver.Channels?.First ?? 1);

        bool HasDevice(Id<Device> id) => rig.Devices.Any(device => device.Id == id);

        bool HasZone(Id<Zone> id) => rig.Zones.Any(zone => zone.Id == id);

        bool HasFeed(Id<Feed> id) => feeds.Any(feed => feed.Id == id);

        ValueList<Destination> Destinations(ValueList<Destination> to) =>
            [
                .. to.Select(entry => entry with { Devices = [.. entry.Devices.Where(HasDevice)], Zones = [.. entry.Zones.Where(HasZone)] })
                    .Where(entry => entry.At is { } at ? Fits(at) : !entry.Devices.IsEmpty || !entry.Zones.IsEmpty),
            ];

        Line Tidied(Line line) =>
            line with
            {
                From = line.From with
                {
                    At = [.. line.From.At.Where(Fits)],
                    Devices = [.. line.From.Devices.Where(HasDevice)],
                    Zones = [.. line.From.Zones.Where(HasZone)],
                    Source = line.From.Source is { } source && Fits(source) ? source : null,
                },
                To = [.. line.To.Where(Fits)],
            };

        static bool HasOrigin(LineOrigin from) => !from.At.IsEmpty || !from.Devices.IsEmpty || !from.Zones.IsEmpty || from.Source is not null;
    }

    private static bool StartsBlock(int size, int number) => (number - 1) % size == 0;

    /// <summary>True for a route that the profile allows: freely, in whole blocks, or nothing at a sink that can be cleared.</summary>
    private static bool IsAllowed(RigView view, Route route)
    {
        var entries = view.Group(route.To)!
            .Profile.Routing.Where(entry => entry.To == route.To.Group && (route.From is not { } source || entry.From == source.Group))
            .ToArray();
        return entries.Any(entry =>
            entry.Mode switch
            {
                RoutingMode.Free => true,
                RoutingMode.Fixed => route.From is null && entry.Clearable,
                _ => IsWhole(entry.BlockSize ?? 1, route.To)
                    && (route.From is not { } source || (IsWhole(entry.BlockSize ?? 1, source) && (entry.Reordering || source.First == route.To.First))),
            }
        );

        static bool IsWhole(int size, PointRange run) => run.Width % size == 0 && StartsBlock(size, run.First);
    }

    public static Rig Tidy(Rig rig)
    {
        var devices = rig
            .Devices.Where(device => rig.Profiles.Any(profile => profile.Id == device.Profile))
            .Select(device => device.Zone is { } zone && rig.Zones.Any(known => known.Id == zone) ? device : device with { Zone = null })
            .ToValueList();
        var clocks = rig
            .Clocks.Where(clock => devices.Any(device => device.Id == clock.Leader))
            .Select(clock => clock.Backup is { } backup && devices.Any(device => device.Id == backup) ? clock : clock with { Backup = null })
            .ToValueList();
        var kept = rig with
        {
            Devices = devices,
            Clocks = clocks,
            Networks =
            [
                .. rig.Networks.Select(network => network.Clock is { } id && clocks.All(clock => clock.Id != id) ? network with { Clock = null } : network),
            ],
            Profiles = [.. rig.Profiles.Where(profile => devices.Any(device => device.Profile == profile.Id))],
        };
        var view = new RigView(kept);
        return kept with
        {
            Links =
            [
                .. rig.Links.Where(link =>
                    view.Group(link.From) is not null && view.Group(link.To) is not null && kept.Networks.Any(network => network.Id == link.Network)
                ),
            ],
            Cables = [.. rig.Cables.Where(cable => view.Group(cable.From) is not null && view.Group(cable.To) is not null)],
            Unavailable = [.. rig.Unavailable.Where(mark => view.Group(mark.At) is not null)],
            Reserved = [.. rig.Reserved.Where(mark => view.Group(mark.At) is not null)],
        };
    }
}
