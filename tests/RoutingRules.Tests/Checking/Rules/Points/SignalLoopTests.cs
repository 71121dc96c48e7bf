using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class SignalLoopTests
{
    private static readonly SignalLoop Rule = new();

    /// <summary>Effects: six inserts whose returns can be routed to their sends, and to channels.</summary>
    private static DeviceProfile Effects { get; } =
        new()
        {
            Id = new("test/effects"),
            Kind = DeviceKind.Processor,
            Name = "Test effects",
            PortGroups =
            [
                SmallProfiles.Group("send", PortKind.Sink, 6),
                SmallProfiles.Group("return", PortKind.Source, 6),
                SmallProfiles.Group("channel", PortKind.Sink, 6),
            ],
            Routing = [SmallProfiles.Entry("return", "send", RoutingMode.Free), SmallProfiles.Entry("return", "channel", RoutingMode.Free)],
            Through =
            [
                new()
                {
                    Kind = ThroughKind.Process,
                    From = new("send"),
                    To = new("return"),
                },
            ],
        };

    private static Show Patched(params Route[] routes) => Of(("fx", Effects)).With(routes);

    [Fact]
    public void A_return_routed_to_its_own_send_gives_one_finding() =>
        Expect.One(
            Rule,
            Patched(Route("fx/return/1", "fx/send/1")),
            Severity.Error,
            "/patch/routes/0",
            "Signal runs in a loop and no real source enters it: fx/send/1 to fx/return/1 and back to fx/send/1.",
            "point=fx/send/1",
            "point=fx/return/1"
        );

    [Fact]
    public void A_circle_through_two_inserts_is_named_in_the_direction_of_signal() =>
        Expect.One(
            Rule,
            Patched(Route("fx/return/4", "fx/channel/1"), Route("fx/return/3", "fx/send/1"), Route("fx/return/1", "fx/send/3")),
            Severity.Error,
            "/patch/routes/1",
            "Signal runs in a loop and no real source enters it: fx/send/1 to fx/return/1 to fx/send/3 to fx/return/3 and back to fx/send/1.",
            "point=fx/send/1",
            "point=fx/return/1",
            "point=fx/send/3",
            "point=fx/return/3"
        );

    [Fact]
    public void Both_halves_of_a_pair_are_one_finding() =>
        Expect.One(
            Rule,
            Patched(Route("fx/return/1-2", "fx/send/1-2")),
            Severity.Error,
            "/patch/routes/0",
            "Signal runs in a loop and no real source enters it: fx/send/1-2 to fx/return/1-2 and back to fx/send/1-2.",
            "point=fx/send/1-2",
            "point=fx/return/1-2"
        );

    [Fact]
    public void A_circle_over_cables_is_found()
    {
        var show = Of(("a", SmallProfiles.Amplifier), ("b", SmallProfiles.Amplifier));

        Expect.One(
            Rule,
            show with
            {
                Rig = show.Rig with { Cables = [Cable("a/out/1", "b/in/2"), Cable("b/out/2", "a/in/1")] },
            },
            Severity.Error,
            "/rig/cables/0",
            "Signal runs in a loop and no real source enters it: a/in/1 to a/out/1 to b/in/2 to b/out/2 and back to a/in/1.",
            "point=a/in/1",
            "point=a/out/1",
            "point=b/in/2",
            "point=b/out/2"
        );
    }

    [Fact]
    public void What_only_hangs_on_a_circle_is_not_part_of_it() =>
        Expect.One(
            Rule,
            Patched(Route("fx/return/1", "fx/send/1"), Route("fx/return/1", "fx/channel/5"), Route("fx/return/1", "fx/send/2")),
            Severity.Error,
            "/patch/routes/0",
            "Signal runs in a loop and no real source enters it: fx/send/1 to fx/return/1 and back to fx/send/1.",
            "point=fx/send/1",
            "point=fx/return/1"
        );

    [Fact]
    public void A_circle_inside_a_profile_points_at_the_device()
    {
        var profile = Effects with { FactoryRoutes = [SmallProfiles.Factory("return", 1, 1, "send", 1)] };

        Assert.Equal("/rig/devices/0/profile", Assert.Single(RuleTester.Findings(Rule, Of(("fx", profile)))).Pointer);
    }

    [Fact]
    public void A_chain_of_inserts_without_end_to_end_is_no_circle() =>
        Expect.None(Rule, Patched([.. Enumerable.Range(1, 5).Select(n => Route($"fx/return/{n}", $"fx/send/{n + 1}"))]));

    [Fact]
    public void Other_rules_are_silent_about_a_circle()
    {
        var show = Patched(Route("fx/return/1", "fx/send/1"), Route("fx/return/1", "fx/channel/5"));

        Expect.None(new RouteDangling(), show);
        Expect.None(new OutputOrphaned(), show);
    }

    /// <summary>Any permutation of the returns over the sends: its cycles, counted here by hand, are the circles.</summary>
    [Property]
    public Property Every_cycle_of_a_permutation_is_found_once() =>
        Prop.ForAll(
            Gen.Shuffle(Enumerable.Range(1, 6).ToArray()).ToArbitrary(),
            shuffled =>
            {
                var returnAt = shuffled.ToArray();
                var findings = RuleTester.Findings(
                    Rule,
                    Patched([.. returnAt.Select((from, position) => Route($"fx/return/{from}", $"fx/send/{position + 1}"))])
                );
                var circles = findings.Sum(finding => At(finding.Entities[0].Id).Width);
                var points = findings
                    .SelectMany(finding => finding.Entities.ToArray())
                    .SelectMany(entity => Enumerable.Range(0, At(entity.Id).Width).Select(i => At(entity.Id)[i].ToString()));

                Assert.Equal(Cycles(returnAt), circles);
                Assert.Equal(12, points.Distinct().Count());
            }
        );

    private static int Cycles(int[] next)
    {
        var seen = new bool[next.Length];
        var cycles = 0;
        for (var start = 0; start < next.Length; start++)
        {
            cycles += seen[start] ? 0 : 1;
            for (var at = start; !seen[at]; at = next[at] - 1)
            {
                seen[at] = true;
            }
        }

        return cycles;
    }
}
