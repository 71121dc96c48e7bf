using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Promise 9: what ends at a transmitter rack is in-ear whatever it is called.</summary>
public sealed class EarPromises
{
    private static readonly FeedRole[] Roles =
    [
        FeedRole.InEar,
        FeedRole.Monitor,
        FeedRole.Utility,
        new("iem"),
        new("in-eer"),
        FeedRole.Main,
        FeedRole.Sub,
        FeedRole.Fill,
        FeedRole.Record,
        FeedRole.Talkback,
        FeedRole.Evacuation,
    ];

    private static readonly DeviceProfile Rack = new()
    {
        Id = new("test/big-rack"),
        Kind = DeviceKind.TransmitterRack,
        Name = "Rack",
        PortGroups = [SmallProfiles.Group("in", PortKind.Input, 64) with { Level = SignalLevel.Line, Paired = true }],
    };

    private static readonly DeviceProfile Wedges = new()
    {
        Id = new("test/many-wedges"),
        Kind = DeviceKind.Loudspeaker,
        Name = "Wedges",
        PortGroups = [SmallProfiles.Group("in", PortKind.Input, 64) with { Level = SignalLevel.Line }],
    };

    [Property(MaxTest = Promise.Cases)]
    public Property A_clean_show_with_its_in_ear_mixes_at_a_rack_is_clean() =>
        Promise.Of(
            ShowArbitraries.Clean(),
            clean => Racked(clean.Show),
            clean =>
                Promise.Engine.Check(Racked(clean.Show)).Findings.FirstOrDefault(finding => finding.Severity > Severity.Note) is { } loud
                    ? $"{loud.Rule} {loud.Message}"
                    : null
        );

    [Property(MaxTest = Promise.Cases / 10)]
    public Property A_feed_at_a_rack_without_a_limiter_is_an_error_whatever_its_role() =>
        Promise.Of(
            ShowArbitraries.Clean(),
            clean => Racked(clean.Show),
            clean =>
            {
                var show = Racked(clean.Show);
                var ears = show.Feeds.Where(feed => feed.Role == FeedRole.InEar).Select(feed => feed.Id).ToHashSet();
                for (var i = 0; i < Roles.Length && ears.Count > 0; i++)
                {
                    bool? limiter = i % 2 == 0 ? null : false;
                    var renamed = show with
                    {
                        Feeds = [.. show.Feeds.Select(feed => ears.Contains(feed.Id) ? feed with { Role = Roles[i], Limiter = limiter } : feed)],
                    };
                    var told = Promise
                        .Engine.Check(renamed)
                        .Findings.Where(finding => finding.Severity == Severity.Error && finding.Rule.StartsWith("RR9", StringComparison.Ordinal))
                        .SelectMany(finding => finding.Entities)
                        .ToHashSet();
                    if (ears.FirstOrDefault(id => !told.Contains(Entity.Of("feed", id))) is { IsNone: false } silent)
                    {
                        return $"Feed {silent} in the role {Roles[i]} ends at the rack, and no error says so.";
                    }
                }

                return null;
            }
        );

    /// <summary>The show with the places of in-ear feeds cabled to a rack, where they are pinned, and those of the others to wedges.</summary>
    private static Show Racked(Show show)
    {
        var resolved = Promise.Resolve(show);
        var cables = show.Rig.Cables.ToList();
        var (atRack, atWedges) = (1, 1);
        var feeds = show.Feeds.ToArray();
        foreach (
            var demand in resolved.Demands.Where(demand => demand.Feed is not null && !demand.Existing.IsNone && resolved.Graph.Fed(demand.Existing).IsEmpty)
        )
        {
            var isEar = demand.Feed!.Model.Role == FeedRole.InEar;
            atRack += isEar && demand.Width == 2 && atRack % 2 == 0 ? 1 : 0;
            var first = isEar ? atRack : atWedges;
            var to = new PointRange(new(isEar ? "rack" : "wedges"), new("in"), first, first + demand.Width - 1);
            cables.Add(new Cable { From = resolved.Graph.Address(demand.Existing, demand.Width), To = to });
            if (isEar)
            {
                var entries = feeds[demand.Feed.Index].To.ToArray();
                entries[demand.Entry] = new Destination { At = to };
                feeds[demand.Feed.Index] = feeds[demand.Feed.Index] with { To = entries.ToValueList() };
                atRack += demand.Width;
            }
            else
            {
                atWedges += demand.Width;
            }
        }

        return show with
        {
            Feeds = feeds.ToValueList(),
            Rig = show.Rig with
            {
                Profiles = [.. show.Rig.Profiles, Rack, Wedges],
                Devices = [.. show.Rig.Devices, new() { Id = new("rack"), Profile = Rack.Id }, new() { Id = new("wedges"), Profile = Wedges.Id }],
                Cables = cables.ToValueList(),
            },
        };
    }
}
