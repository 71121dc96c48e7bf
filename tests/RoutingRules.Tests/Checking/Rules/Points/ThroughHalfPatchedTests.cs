using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Lines;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class ThroughHalfPatchedTests
{
    private static readonly ThroughHalfPatched Rule = new();

    private static readonly DeviceProfile Processor = SmallProfiles.Amplifier with
    {
        Id = new("test/processor"),
        Kind = DeviceKind.Processor,
        PortGroups = [SmallProfiles.Group("in", PortKind.Input, 4), SmallProfiles.Group("out", PortKind.Output, 4) with { Level = SignalLevel.Line }],
    };

    private static Show Insert(params Cable[] cables) =>
        Of(("desk", SmallProfiles.Console), ("proc", Processor), ("box", SmallProfiles.Box), ("split", LineRig.Split), ("amp", SmallProfiles.Amplifier))
            .Cables(cables);

    [Fact]
    public void A_send_without_a_return_is_half_patched() =>
        Expect.One(
            Rule,
            Insert(Cable("desk/out/1-2", "proc/in/1-2")),
            Severity.Warning,
            "/rig/devices/1",
            "Signal goes in at proc/in/1-2, but nothing takes it from proc/out/1-2.",
            "open=proc/out/1-2",
            "connected=proc/in/1-2"
        );

    [Fact]
    public void A_return_without_a_send_is_half_patched() =>
        Expect.One(
            Rule,
            Insert(Cable("proc/out/1", "desk/in/1")),
            Severity.Warning,
            "/rig/devices/1",
            "proc/out/1 leads on, but nothing is plugged into proc/in/1.",
            "open=proc/in/1",
            "connected=proc/out/1"
        );

    [Fact]
    public void One_leg_of_a_pair_is_told_for_the_leg_that_is_open() =>
        Expect.One(
            Rule,
            Insert(Cable("desk/out/1-2", "proc/in/1-2"), Cable("proc/out/1", "desk/in/1")),
            Severity.Warning,
            "/rig/devices/1",
            "Signal goes in at proc/in/2, but nothing takes it from proc/out/2.",
            "open=proc/out/2",
            "connected=proc/in/2"
        );

    [Fact]
    public void Whole_paths_idle_paths_amplifiers_and_splits_are_fine()
    {
        Expect.None(Rule, Insert(Cable("desk/out/1-2", "proc/in/1-2"), Cable("proc/out/1-2", "desk/in/1-2")));
        Expect.None(Rule, Insert());
        Expect.None(Rule, Insert(Cable("box/out/1-4", "amp/in/1-4")));
        Expect.None(Rule, Insert(Cable("split/one/1", "box/in/1")));
    }

    [Fact]
    public void The_last_loudspeaker_of_a_row_has_a_link_output_to_spare()
    {
        var linked = new DeviceProfile
        {
            Id = new("test/linked"),
            Kind = DeviceKind.Loudspeaker,
            Name = "Powered loudspeaker",
            PortGroups =
            [
                SmallProfiles.Group("in", PortKind.Input, 1) with
                {
                    Level = SignalLevel.Line,
                },
                SmallProfiles.Group("link", PortKind.Output, 1) with
                {
                    Level = SignalLevel.Line,
                },
            ],
            Through =
            [
                new()
                {
                    Kind = ThroughKind.Passive,
                    From = new("in"),
                    To = new("link"),
                },
            ],
        };
        var row = Of(("desk", SmallProfiles.Console), ("one", linked), ("two", linked))
            .Cables(Cable("desk/out/1", "one/in/1"), Cable("one/link/1", "two/in/1"));

        Expect.None(Rule, row);
        Assert.Single(
            RuleTester.Findings(Rule, row with { Rig = row.Rig with { Profiles = [row.Rig.Profiles[0], linked with { Kind = DeviceKind.Processor }] } })
        );
    }

    [Fact]
    public void Ends_that_feeds_lines_and_broken_cables_speak_of_are_left_alone()
    {
        Expect.None(Rule, Insert(Cable("desk/out/1", "proc/in/1")) with { Feeds = [Feed("f", FeedRole.Fill, "desk/main/1", "proc/in/1")] });
        Expect.None(Rule, Insert(Cable("proc/out/1", "desk/in/1")) with { Lines = [Line("l", "proc/in/1", "desk/channel/1")] });
        Expect.None(Rule, Insert(Cable("desk/out/1", "proc/in/1"), Cable("proc/out/1", "gone/in/1")));
    }
}
