using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Streams;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Streams;

public sealed class StreamWithoutSignalTests
{
    private static readonly StreamWithoutSignal Rule = new();

    private static Show DeskAndBox => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));

    [Fact]
    public void A_stream_of_empty_slots_gives_one_note() =>
        Expect.One(
            Rule,
            DeskAndBox.With(Stream("s2", "desk/transmit/5-8", "box/receive/1-4")),
            Severity.Note,
            "/patch/streams/0/from",
            "Stream 's2' carries no signal: nothing arrives at desk/transmit/5-8.",
            "stream=s2"
        );

    [Theory]
    [InlineData(5)]
    [InlineData(8)]
    public void One_slot_with_a_bus_is_enough(int slot) =>
        Expect.None(Rule, DeskAndBox.With(Route("desk/aux/8", $"desk/transmit/{slot}")).With(Stream("s2", "desk/transmit/5-8", "box/receive/1-4")));

    [Fact]
    public void Inputs_and_factory_routes_count_as_signal()
    {
        Expect.None(Rule, DeskAndBox.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")));
        Expect.None(Rule, DeskAndBox.With(Stream("s1", "box/transmit/5-8", "desk/receive/1-4")));
    }

    [Fact]
    public void Slots_that_are_cleared_carry_nothing() =>
        Assert.Single(RuleTester.Findings(Rule, DeskAndBox.With(Route(null, "desk/transmit/1-4")).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"))));

    [Fact]
    public void A_cable_from_a_silent_output_brings_no_signal()
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.FreeBox), ("b", SmallProfiles.FreeBox));
        show = show.With(Route("b/in/1", "b/transmit/1")).With(Stream("s1", "b/transmit/1-4", "desk/receive/1-4"));

        Expect.None(Rule, show);
        Assert.Single(RuleTester.Findings(Rule, show with { Rig = show.Rig with { Cables = [Cable("a/out/1", "b/in/1")] } }));
    }

    [Fact]
    public void A_stream_without_receivers_and_one_in_a_loop_are_left_to_their_own_rules()
    {
        Expect.None(Rule, DeskAndBox.With(Stream("s2", "desk/transmit/5-8")));
        var loop = Of(("a", SmallProfiles.FreeBox), ("b", SmallProfiles.FreeBox));
        loop = loop.With(Route("a/in/1", "a/transmit/1"), Route("b/receive/1", "b/out/1")).With(Stream("s1", "a/transmit/1-4", "b/receive/1-4"));
        Expect.None(Rule, loop with { Rig = loop.Rig with { Cables = [Cable("b/out/1", "a/in/1")] } });
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
