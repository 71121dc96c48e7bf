using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Verification;
using static RoutingRules.Testing.SmallProfiles;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Assignment;

/// <summary>What stands behind an output, and what receivers that nobody mentions take.</summary>
public class ProcessorTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    private static readonly DeviceProfile Processor = new()
    {
        Id = new("test/processor"),
        Kind = DeviceKind.Processor,
        Name = "Test processor",
        PortGroups = [Group("in", PortKind.Input, 2) with { Level = SignalLevel.Line }, Group("out", PortKind.Output, 4) with { Level = SignalLevel.Line }],
        Routing = [Entry("in", "out", RoutingMode.Free)],
        FactoryRoutes = [Factory("in", 1, 2, "out", 1), Factory("in", 1, 2, "out", 3)],
    };

    private static Show Front(Show show) =>
        show with
        {
            Rig = show.Rig with { Cables = [new Cable { From = At("desk/out/1"), To = At("proc/in/1") }] },
            Feeds =
            [
                new Feed
                {
                    Id = new("front"),
                    Role = FeedRole.Fill,
                    Source = At("desk/aux/1"),
                    To = [new Destination { At = At("proc/in/1") }],
                },
            ],
        };

    [Fact]
    public void A_processor_is_never_muted_for_the_sake_of_a_stray_before_it()
    {
        var show = Front(Of(("desk", SmallProfiles.Console), ("proc", Processor)));
        var first = Engine.Assign(show);
        var without = Engine.Assign(first.Show with { Feeds = [] });
        var back = Engine.Assign(without.Show with { Feeds = show.Feeds });

        Assert.DoesNotContain(without.Show.Patch.Routes, route => route.To.Device.Value == "proc");
        Assert.Equal(first.Show, back.Show);
        Assert.Equal("desk/aux/1", Source(back.Show, "proc/out/3"));
    }

    [Fact]
    public void The_stray_itself_is_cleared_where_it_was_placed()
    {
        var first = Engine.Assign(Front(Of(("desk", SmallProfiles.Console), ("proc", Processor))));
        var without = Engine.Assign(first.Show with { Feeds = [] });

        Assert.Null(Source(without.Show, "desk/out/1"));
    }

    [Fact]
    public void A_muted_processor_behind_a_place_is_a_fault_of_the_result()
    {
        var show = Front(Of(("desk", SmallProfiles.Console), ("proc", Processor)));
        var result = Engine.Assign(show);
        var muted = result with
        {
            Show = result.Show with { Patch = result.Show.Patch with { Routes = [.. result.Show.Patch.Routes, new Route { To = At("proc/out/3") }] } },
        };

        var problems = AssignmentVerifier.Verify(show, muted, new AssignmentOptions(), _ => null).Problems;

        Assert.Contains("front/1 stands at desk/out/1 and no longer sounds at proc/out/3, which hangs on it; leave the way between them as it was.", problems);
    }

    private static Show Shared(string source, string at) =>
        Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("other", SmallProfiles.Box))
            .With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4", "other/receive/1-4")) with
        {
            Rig = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("other", SmallProfiles.Box)).Rig,
            Feeds =
            [
                new Feed
                {
                    Id = new("wedge"),
                    Role = FeedRole.Monitor,
                    Source = At(source),
                    To = [new Destination { At = At(at) }],
                },
            ],
        };

    [Fact]
    public void A_receiver_nobody_mentions_that_has_to_leave_is_listed()
    {
        // The factory puts aux 1 into slot 1, which the fixed box needs for aux 2.
        var result = Engine.Assign(Shared("desk/aux/2", "box/out/1"));

        Assert.Equal([new RemovedReceiver { Stream = new("s1"), At = At("other/receive/1-4") }], result.RemovedReceivers);
    }

    [Fact]
    public void A_receiver_nobody_mentions_stays_where_the_rest_of_what_it_takes_falls_silent()
    {
        // Aux 1 stays in slot 1; slots 2 to 4 fall silent because outputs 2 to 4 of the box are idle.
        var result = Engine.Assign(Shared("desk/aux/1", "box/out/1"));

        Assert.Empty(result.RemovedReceivers);
        Assert.Equal("desk/aux/1", Source(result.Show, "other/out/1"));
        Assert.Null(Source(result.Show, "other/out/2"));
    }

    private static string? Source(Show show, string point)
    {
        var graph = Engine.Resolve(show).Graph;
        var origin = graph.Origin(graph.Find(At(point)[0]));
        return origin.Value < 0 ? null : graph.Address(origin).ToString();
    }
}
