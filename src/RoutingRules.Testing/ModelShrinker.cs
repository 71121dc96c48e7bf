using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>Smaller values that are still well formed: lists with one entry less or none, members left out.</summary>
internal static class ModelShrinker
{
    public static IEnumerable<Show> Shrink(Show show) =>
        [
            .. Without(show.Feeds, ShrinkFeed).Select(feeds => show with { Feeds = feeds }),
            .. Without(show.Lines, ShrinkLine).Select(lines => show with { Lines = lines }),
            .. Shrink(show.Rig).Select(rig => show with { Rig = rig }),
            .. Shrink(show.Patch).Select(patch => show with { Patch = patch }),
            .. Changed(show, show with { Venue = null, Date = null, Revision = null }, show with { Extensions = null }, show with { Title = "t" }),
        ];

    public static IEnumerable<DeviceProfile> Shrink(DeviceProfile profile) =>
        [
            .. Without(profile.PortGroups, ShrinkGroup).Select(groups => profile with { PortGroups = groups }),
            .. Without(profile.Routing).Select(routing => profile with { Routing = routing }),
            .. Without(profile.Through).Select(through => profile with { Through = through }),
            .. Without(profile.FactoryRoutes).Select(routes => profile with { FactoryRoutes = routes }),
            .. Without(profile.LatencyMilliseconds).Select(latency => profile with { LatencyMilliseconds = latency }),
            .. Without(profile.SampleRates).Select(rates => profile with { SampleRates = rates }),
            .. Changed(
                profile,
                profile with
                {
                    Limits = null,
                },
                profile with
                {
                    Notes = null,
                },
                profile with
                {
                    Extensions = null,
                },
                profile with
                {
                    Name = "n",
                    Version = 1,
                }
            ),
        ];

    public static IEnumerable<EngineConfig> Shrink(EngineConfig config) =>
        [
            .. Without(config.Rules).Select(rules => config with { Rules = rules }),
            .. Changed(
                config,
                config with
                {
                    Assignment = new AssignmentConfig(),
                },
                config with
                {
                    Lists = new ListsConfig(),
                },
                config with
                {
                    Extensions = null,
                },
                config with
                {
                    FailOn = Rules.Severity.Warning,
                    Extends = default,
                }
            ),
        ];

    private static IEnumerable<Rig> Shrink(Rig rig) =>
        [
            .. Without(rig.Zones).Select(zones => rig with { Zones = zones }),
            .. Without(rig.Clocks).Select(clocks => rig with { Clocks = clocks }),
            .. Without(rig.Networks).Select(networks => rig with { Networks = networks }),
            .. Without(rig.Devices).Select(devices => rig with { Devices = devices }),
            .. Without(rig.Links).Select(links => rig with { Links = links }),
            .. Without(rig.Cables).Select(cables => rig with { Cables = cables }),
            .. Without(rig.Unavailable).Select(points => rig with { Unavailable = points }),
            .. Without(rig.Reserved).Select(points => rig with { Reserved = points }),
            .. Without(rig.Profiles, Shrink).Select(profiles => rig with { Profiles = profiles }),
            .. Changed(rig, rig with { Extensions = null }),
        ];

    private static IEnumerable<Patch> Shrink(Patch patch) =>
        [
            .. Without(patch.Streams, stream => Without(stream.To).Select(to => stream with { To = to })).Select(streams => patch with { Streams = streams }),
            .. Without(patch.Routes).Select(routes => patch with { Routes = routes }),
            .. Without(patch.Inputs).Select(inputs => patch with { Inputs = inputs }),
            .. Without(patch.Labels).Select(labels => patch with { Labels = labels }),
            .. Changed(patch, patch with { Extensions = null }),
        ];

    private static IEnumerable<Feed> ShrinkFeed(Feed feed) =>
        [
            .. Without(feed.To).Where(to => to.Count > 0).Select(to => feed with { To = to }),
            .. Changed(
                feed,
                new Feed
                {
                    Id = feed.Id,
                    Role = feed.Role,
                    Source = feed.Source,
                    To = feed.To,
                },
                feed with
                {
                    Name = null,
                    Person = null,
                    DelayMilliseconds = null,
                    Override = null,
                    Pack = null,
                    Position = null,
                    Notes = null,
                },
                feed with
                {
                    Set = null,
                    Part = null,
                    Group = null,
                },
                feed with
                {
                    SeparateFrom = default,
                },
                feed with
                {
                    Extensions = null,
                }
            ),
        ];

    private static IEnumerable<Line> ShrinkLine(Line line) =>
        [
            .. Without(line.To).Where(to => to.Count > 0).Select(to => line with { To = to }),
            .. Changed(
                line,
                new Line
                {
                    Id = line.Id,
                    Kind = line.Kind,
                    From = line.From,
                    To = line.To,
                },
                line with
                {
                    Name = null,
                    Equipment = null,
                    Stand = null,
                    Position = null,
                    SuppliedBy = null,
                    Notes = null,
                },
                line with
                {
                    Extensions = null,
                }
            ),
        ];

    private static IEnumerable<PortGroup> ShrinkGroup(PortGroup group) =>
        Changed(
            group,
            new PortGroup
            {
                Id = group.Id,
                Kind = group.Kind,
                Count = group.Count,
                CountByRate = group.CountByRate,
            },
            group with
            {
                PanelLabels = default,
                Bridged = default,
            },
            group with
            {
                Extensions = null,
            }
        );

    /// <summary>Nothing, each half, all but one, and each entry shrunk in its place.</summary>
    private static IEnumerable<ValueList<T>> Without<T>(ValueList<T> list, Func<T, IEnumerable<T>>? shrink = null)
    {
        var items = list.ToArray();
        if (items.Length > 0)
        {
            yield return default;
        }

        if (items.Length > 3)
        {
            yield return items[..(items.Length / 2)].ToValueList();
            yield return items[(items.Length / 2)..].ToValueList();
        }

        for (var i = 0; i < items.Length && items.Length > 1; i++)
        {
            yield return items.Where((_, at) => at != i).ToValueList();
        }

        for (var i = 0; i < items.Length && shrink is not null; i++)
        {
            foreach (var smaller in shrink(items[i]))
            {
                yield return items.Select((item, at) => at == i ? smaller : item).ToValueList();
            }
        }
    }

    private static IEnumerable<T> Changed<T>(T value, params T[] simpler)
        where T : class => simpler.Where(other => !other.Equals(value));
}
