using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Planning.Losses;

/// <summary>What single steps of a plan do to a show.</summary>
public sealed class FallbackStepsTests
{
    private static readonly Show Start = Make();

    private static Show Make()
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.FreeBox), ("b", SmallProfiles.FreeBox), ("amp", SmallProfiles.Amplifier));
        return show with
        {
            Rig = show.Rig with { Cables = [Cable("a/out/1-4", "amp/in/1-4") with { Way = "loom" }] },
            Patch = new()
            {
                Routes = [Route("a/receive/1-4", "a/out/1-4"), Route(null, "a/out/5-8")],
                Streams = [Stream("one", "desk/transmit/1-4", "a/receive/1-4"), Stream("two", "desk/transmit/5-8", "a/receive/5-8")],
                Inputs = [new() { At = At("a/in/1-2"), Phantom = true }, new() { At = At("b/in/7"), Phantom = false }],
            },
        };
    }

    private static Show After(params FallbackStep[] steps) => FallbackSteps.Apply(Start, steps.ToValueList());

    private static FallbackStep Replug(string from, string to, params string[] cableTo) =>
        new()
        {
            Kind = FallbackStepKind.Replug,
            Device = At(to).Device,
            From = At(from),
            To = At(to),
            CableTo = cableTo.Select(point => At(point)[0]).ToValueList(),
        };

    private static FallbackStep Set(string? from, string to) =>
        new()
        {
            Kind = FallbackStepKind.Route,
            Device = At(to).Device,
            Route = Route(from, to),
        };

    private static string[] Cables(Show show) => [.. show.Rig.Cables.Select(cable => $"{cable.From} to {cable.To} in {cable.Way}")];

    private static string[] Routes(Show show) => [.. show.Patch.Routes.Select(route => $"{route.From} to {route.To}")];

    [Fact]
    public void Of_a_cable_only_the_cores_that_move_leave_it_each_with_its_far_end() =>
        Assert.Equal(
            ["a/out/1 to amp/in/1 in loom", "a/out/4 to amp/in/4 in loom", "b/out/7 to amp/in/2 in loom", "b/out/8 to amp/in/3 in loom"],
            Cables(After(Replug("a/out/2-3", "b/out/7-8", "amp/in/2", "amp/in/3")))
        );

    [Fact]
    public void What_gives_up_its_place_takes_its_core_away_and_no_other() =>
        Assert.Equal(
            ["a/out/1-2 to amp/in/1-2 in loom", "a/out/4 to amp/in/4 in loom"],
            Cables(
                After(
                    new FallbackStep
                    {
                        Kind = FallbackStepKind.Pull,
                        Device = new("a"),
                        From = At("a/out/3"),
                    }
                )
            )
        );

    // A core that was pulled first leaves its far end free for what comes in its place.
    [Fact]
    public void Steps_are_done_in_their_order() =>
        Assert.Equal(
            ["a/out/2-3 to amp/in/2-3 in loom", "a/out/4 to amp/in/1 in loom"],
            Cables(
                After(
                    new FallbackStep
                    {
                        Kind = FallbackStepKind.Pull,
                        Device = new("a"),
                        From = At("a/out/4"),
                    },
                    Replug("a/out/1", "a/out/4", "amp/in/1")
                )
            )
        );

    [Fact]
    public void A_route_takes_its_sinks_out_of_others_and_leaves_them_their_sources()
    {
        Assert.Equal(
            ["a/receive/1 to a/out/1", "a/receive/4 to a/out/4", " to a/out/5-8", "a/receive/7-8 to a/out/2-3"],
            Routes(After(Set("a/receive/7-8", "a/out/2-3")))
        );
        Assert.Equal(["a/receive/1-3 to a/out/1-3", " to a/out/6-8", "a/receive/5-6 to a/out/4-5"], Routes(After(Set("a/receive/5-6", "a/out/4-5"))));
        Assert.Equal([" to a/out/5-8", " to a/out/1-4"], Routes(After(Set(null, "a/out/1-4"))));
        Assert.Equal(["a/receive/1-4 to a/out/1-4", " to a/out/5-8", "b/receive/1 to b/out/1"], Routes(After(Set("b/receive/1", "b/out/1"))));
    }

    [Fact]
    public void Streams_are_changed_where_they_stand_taken_away_and_added_at_the_end()
    {
        var changed = Stream("one", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4");
        var added = Stream("three", "a/transmit/1-4", "desk/receive/1-4");

        Assert.Equal([changed, added], After(Of(changed.Id, changed), Of(new("two"), null), Of(added.Id, added)).Patch.Streams);

        static FallbackStep Of(Id<AudioStream> id, AudioStream? stream) =>
            new()
            {
                Kind = FallbackStepKind.Stream,
                Device = new("desk"),
                StreamId = id,
                Stream = stream,
            };
    }

    // What is said about the new input stays as it is; where nothing is said, what was said about the old one comes along, point by point.
    [Fact]
    public void Phantom_power_and_gain_go_with_the_line_unless_the_new_input_has_its_own()
    {
        var inputs = After(Replug("a/in/1-2", "b/in/7-8")).Patch.Inputs;

        Assert.Equal(["a/in/1-2 True", "b/in/7 False", "b/in/8 True"], inputs.Select(input => $"{input.At} {input.Phantom}"));
    }
}
