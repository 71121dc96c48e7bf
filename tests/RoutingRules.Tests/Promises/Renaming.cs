using RoutingRules.Model;

namespace RoutingRules.Tests.Promises;

/// <summary>Gives devices, zones, feeds and lines of a show other names, so that their ordinal order turns round.</summary>
/// <remarks>Links keep theirs: paths of equal length are chosen by them.</remarks>
internal static class Renaming
{
    public static Show Rename(Show show) =>
        show with
        {
            Rig = show.Rig with
            {
                Zones = [.. show.Rig.Zones.Select(zone => zone with { Id = New(zone.Id), Near = [.. zone.Near.Select(New)] })],
                Clocks = [.. show.Rig.Clocks.Select(clock => clock with { Leader = New(clock.Leader), Backup = Maybe(clock.Backup) })],
                Devices = [.. show.Rig.Devices.Select(device => device with { Id = New(device.Id), Zone = Maybe(device.Zone) })],
                Links = [.. show.Rig.Links.Select(link => link with { From = New(link.From), To = New(link.To) })],
                Cables = [.. show.Rig.Cables.Select(cable => cable with { From = New(cable.From), To = New(cable.To) })],
                Unavailable = [.. show.Rig.Unavailable.Select(mark => mark with { At = New(mark.At) })],
                Reserved = [.. show.Rig.Reserved.Select(mark => mark with { At = New(mark.At) })],
            },
            Feeds =
            [
                .. show.Feeds.Select(feed =>
                    feed with
                    {
                        Id = New(feed.Id),
                        Source = New(feed.Source),
                        To =
                        [
                            .. feed.To.Select(entry =>
                                entry with
                                {
                                    At = Maybe(entry.At),
                                    Devices = [.. entry.Devices.Select(New)],
                                    Zones = [.. entry.Zones.Select(New)],
                                }
                            ),
                        ],
                        SeparateFrom = [.. feed.SeparateFrom.Select(separation => separation with { Feed = New(separation.Feed) })],
                        BackupOf = Maybe(feed.BackupOf),
                    }
                ),
            ],
            Lines =
            [
                .. show.Lines.Select(line =>
                    line with
                    {
                        Id = New(line.Id),
                        From = line.From with
                        {
                            At = [.. line.From.At.Select(New)],
                            Devices = [.. line.From.Devices.Select(New)],
                            Zones = [.. line.From.Zones.Select(New)],
                            Source = Maybe(line.From.Source),
                        },
                        To = [.. line.To.Select(New)],
                    }
                ),
            ],
            Patch = show.Patch with
            {
                Streams =
                [
                    .. show.Patch.Streams.Select(stream =>
                        stream with
                        {
                            From = New(stream.From),
                            To = [.. stream.To.Select(receiver => receiver with { At = New(receiver.At) })],
                        }
                    ),
                ],
                Routes = [.. show.Patch.Routes.Select(route => route with { From = Maybe(route.From), To = New(route.To) })],
                Inputs = [.. show.Patch.Inputs.Select(input => input with { At = New(input.At), GainOwner = Maybe(input.GainOwner) })],
                Labels = [.. show.Patch.Labels.Select(label => label with { At = New(label.At) })],
            },
        };

    /// <summary>Letters turn round, a for z, so that ordinal order turns round too.</summary>
    private static Id<T> New<T>(Id<T> id) =>
        new(
            string.Concat(
                "r",
                string.Concat(
                    id.Value.Select(letter =>
                        letter is >= 'a' and <= 'z' ? (char)('a' + 'z' - letter)
                        : letter is >= '0' and <= '9' ? (char)('0' + '9' - letter)
                        : letter
                    )
                )
            )
        );

    private static PointRange New(PointRange range) => new(New(range.Device), range.Group, range.First, range.Last);

    private static PointRange? Maybe(PointRange? range) => range is { } value ? New(value) : null;

    private static Id<T>? Maybe<T>(Id<T>? id) => id is { } value ? New(value) : null;
}
