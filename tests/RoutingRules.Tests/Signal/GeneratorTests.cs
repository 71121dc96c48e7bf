using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.Signal;

/// <summary>What the generators of the test kit say of themselves: valid is valid, also when shrunk, and messy is messy.</summary>
public sealed class GeneratorTests
{
    public static TheoryData<string> ProfileKinds => ["any", "consoles", "boxes", "processors", "selectors", "carriers"];

    [Theory]
    [MemberData(nameof(ProfileKinds))]
    public void Profiles_are_sound_shrink_to_sound_ones_and_can_be_written(string kind) =>
        Prop.ForAll(
                Profiles(kind),
                profile =>
                {
                    foreach (var one in new[] { profile }.Concat(Profiles(kind).Shrinker(profile)))
                    {
                        var show = new Show
                        {
                            Title = "t",
                            Rig = new Rig { Devices = [new() { Id = new("d"), Profile = one.Id }], Profiles = [one] },
                        };
                        Assert.Equal([], RuleTester.Findings(new ProfileUnsound(), show));
                        Assert.Equal(one, ProfileReader.Read(ProfileWriter.ToUtf8(one)).Value);
                    }
                }
            )
            .Check(Config.QuickThrowOnFailure.WithMaxTest(200));

    [Property(MaxTest = Promise.Cases)]
    public Property Rigs_resolve_in_full_and_so_do_smaller_ones() =>
        Prop.ForAll(
            RigArbitraries.Rigs(),
            rig =>
            {
                foreach (var one in new[] { rig }.Concat(RigArbitraries.Rigs().Shrinker(rig).Take(12)))
                {
                    var show = Promise.Resolve(new Show { Title = "t", Rig = one });
                    Assert.All(show.Cables, cable => Assert.Equal(ConnectionState.Connected, cable.State));
                    Assert.All(show.Links, link => Assert.Equal(ConnectionState.Connected, link.State));
                    Assert.Empty(show.Conflicts);
                    Assert.Equal(one.Unavailable.Count + one.Reserved.Count, show.Marks.Count);
                }
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property Valid_shows_connect_in_full_and_so_do_smaller_ones() =>
        Prop.ForAll(
            ShowArbitraries.Valid(),
            show =>
            {
                foreach (var one in new[] { show }.Concat(ShowArbitraries.Valid().Shrinker(show).Take(6)))
                {
                    var resolved = Promise.Resolve(one);
                    Assert.All(resolved.Routes, route => Assert.Equal(ConnectionState.Connected, route.State));
                    Assert.All(resolved.Streams, stream => Assert.Equal(ConnectionState.Connected, stream.State));
                    Assert.All(resolved.Feeds, feed => Assert.Equal(ConnectionState.Connected, feed.SourceState));
                    Assert.All(resolved.Lines, line => Assert.DoesNotContain(PointIndex.None, line.Sinks));
                    Assert.Empty(resolved.Conflicts);
                    Assert.All(Enumerable.Range(0, resolved.Graph.PointCount), point => Assert.False(resolved.Graph.IsLooping(new(point))));
                }
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property Valid_shows_break_no_rule_about_names_numbers_widths_blocks_and_limits() =>
        Promise.Of(
            ShowArbitraries.Valid(),
            show =>
                new[] { show }
                    .Concat(ShowArbitraries.Valid().Shrinker(show).Take(3))
                    .SelectMany(one => Promise.Engine.Check(one).Findings)
                    .FirstOrDefault(finding =>
                        finding.Rule.StartsWith("RR1", StringComparison.Ordinal)
                        || finding.Rule is "RR2001" or "RR2004" or "RR2005" or "RR2006" or "RR2010" or "RR4001" or "RR4002" or "RR4003" or "RR4004" or "RR4007"
                    )
                    is { } finding
                    ? $"{finding.Rule} {finding.Message}"
                    : null
        );

    [Property(MaxTest = Promise.Cases)]
    public Property Every_show_can_be_written_and_read() =>
        Promise.Of(
            ShowArbitraries.Valid(),
            show =>
            {
                var read = ShowReader.Read(ShowWriter.ToUtf8(show));
                return read.Value == show ? null : $"It comes back changed: {string.Join(" ", read.Findings)}";
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property In_clean_shows_every_demand_sounds_where_it_was_wired_and_nothing_else_sounds() =>
        Promise.Of(
            ShowArbitraries.Clean(),
            clean => clean.Show,
            clean =>
            {
                var tracer = new NaiveTracer(clean.Show);
                var wired = clean
                    .Placements.Where(placement => placement.Demand.Contains('/', StringComparison.Ordinal))
                    .SelectMany(placement => Enumerable.Range(0, placement.At.Width).Select(position => placement.At[position]))
                    .ToHashSet();
                foreach (var placement in clean.Placements)
                {
                    foreach (var feed in clean.Show.Feeds.Where(feed => placement.Demand.StartsWith($"{feed.Id}/", StringComparison.Ordinal)))
                    {
                        Assert.All(
                            Enumerable.Range(0, placement.At.Width),
                            position => Assert.Equal(feed.Source[position], tracer.Source(placement.At[position]))
                        );
                    }

                    foreach (var line in clean.Show.Lines.Where(line => line.Id.Value == placement.Demand))
                    {
                        Assert.All(Enumerable.Range(0, line.Width), position => Assert.Equal(placement.At[position], tracer.Source(line.To[0][position])));
                    }
                }

                foreach (
                    var output in tracer
                        .Points(PortKind.Output)
                        .Where(output => output.Device.Value.StartsWith("box-", StringComparison.Ordinal) && tracer.Source(output) is not null)
                )
                {
                    Assert.Contains(tracer.Trace(output).Passed, wired.Contains);
                }

                var named = clean.Show.Lines.SelectMany(line => Enumerable.Range(0, line.Width).Select(position => line.To[0][position])).ToHashSet();
                Assert.All(tracer.Points(PortKind.Sink).Where(sink => tracer.Source(sink) is not null), sink => Assert.Contains(sink, named));
                return null;
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property In_clean_shows_the_engine_finds_each_demand_where_it_was_wired() =>
        Promise.Of(
            ShowArbitraries.Clean(),
            clean => clean.Show,
            clean =>
            {
                var show = Promise.Resolve(clean.Show);
                var found = show.Demands.Select(demand =>
                    demand.Existing.IsNone ? $"{demand.Key} nowhere" : $"{demand.Key} at {show.Graph.Address(demand.Existing, demand.Width)}"
                );
                var wired = clean.Placements.Select(placement => $"{placement.Demand} at {placement.At}");
                return found.SequenceEqual(wired) ? null : $"Wired {string.Join(", ", wired)}, found {string.Join(", ", found)}.";
            }
        );

    [Fact]
    public void Messy_shows_hold_conflicts_loops_idle_routes_and_names_of_nothing()
    {
        var shows = ShowArbitraries.Messy().Generator.Sample(300, new Rnd(20270612), 60).Select(Promise.Resolve).ToArray();

        Assert.InRange(shows.Count(show => show.Conflicts.Count > 0), 30, 300);
        Assert.InRange(shows.Count(show => Enumerable.Range(0, show.Graph.PointCount).Any(point => show.Graph.IsLooping(new(point)))), 6, 300);
        Assert.InRange(shows.Count(show => show.IdleRoutes.Count > 0), 30, 300);
        Assert.InRange(shows.Count(show => show.Routes.Any(route => route.State != ConnectionState.Connected)), 30, 300);
    }

    [Fact]
    public void Rigs_come_with_and_without_links_cables_and_a_digital_multicore()
    {
        var rigs = RigArbitraries.Rigs().Generator.Sample(300, new Rnd(20270612), 60).ToArray();

        Assert.InRange(rigs.Count(rig => rig.Links.IsEmpty), 20, 200);
        Assert.InRange(rigs.Count(rig => rig.Cables.Count > 0), 60, 299);
        Assert.InRange(rigs.Count(rig => rig.Networks.Count > 1), 30, 200);
        Assert.InRange(rigs.Count(rig => rig.Networks[0].LoopControl == LoopControl.RingProtocol), 15, 200);
    }

    private static Arbitrary<DeviceProfile> Profiles(string kind) =>
        kind switch
        {
            "consoles" => ProfileArbitraries.Consoles(),
            "boxes" => ProfileArbitraries.Boxes(),
            "processors" => ProfileArbitraries.Processors(),
            "selectors" => ProfileArbitraries.Selectors(),
            "carriers" => ProfileArbitraries.Carriers(),
            _ => ProfileArbitraries.Any(),
        };
}
