using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class ClockBackupMissingTests
{
    private static readonly ClockBackupMissing Rule = new();

    private static Show Linked => Boxes("a", "b").With(Link("l", "desk/net/1", "a/net/1")).With(Stream("s", "desk/transmit/1-4", "a/receive/1-4"));

    [Fact]
    public void A_clock_without_a_backup_is_a_warning_where_another_device_could_lead() =>
        Expect.One(
            Rule,
            Linked.With(Clock("c", "desk")),
            Severity.Warning,
            "/rig/clocks/0",
            "Clock 'c', led by desk, has no backup; a, for one, could take over.",
            "clock=c"
        );

    [Fact]
    public void It_is_a_note_where_none_could() =>
        Expect.One(
            Rule,
            Linked.With(Clock("c", "desk", rate: 96_000)).WithProfile("a", profile => profile with { SampleRates = [48_000] }),
            Severity.Note,
            "/rig/clocks/0",
            "Clock 'c', led by desk, has no backup; no other device on its networks could take over.",
            "clock=c"
        );

    // Common practice, no source: consoles and stage boxes stay on all day.
    [Fact]
    public void Consoles_and_stage_boxes_are_named_first_and_amplifiers_never()
    {
        Show With(DeviceKind a, DeviceKind b) =>
            Boxes("a", "b")
                .With(Link("l", "desk/net/1", "a/net/1"), Link("m", "desk/net/2", "b/net/1"))
                .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4"))
                .With(Clock("c", "desk"))
                .WithProfile("a", profile => profile with { Id = new("test/a"), Kind = a })
                .WithProfile("b", profile => profile with { Id = new("test/b"), Kind = b });

        string Message(DeviceKind a, DeviceKind b) => Assert.Single(RuleTester.Findings(Rule, With(a, b))).Message;

        Assert.EndsWith("; a, for one, could take over.", Message(DeviceKind.StageBox, DeviceKind.StageBox), StringComparison.Ordinal);
        Assert.EndsWith("; b, for one, could take over.", Message(DeviceKind.StageBox, DeviceKind.Console), StringComparison.Ordinal);
        Assert.EndsWith("; b, for one, could take over.", Message(DeviceKind.Recorder, DeviceKind.StageBox), StringComparison.Ordinal);
        Assert.EndsWith("; b, for one, could take over.", Message(DeviceKind.Amplifier, DeviceKind.Recorder), StringComparison.Ordinal);
        Assert.EndsWith("; no other device on its networks could take over.", Message(DeviceKind.Amplifier, DeviceKind.Amplifier), StringComparison.Ordinal);
    }

    [Fact]
    public void A_leader_is_no_backup_of_its_own() =>
        Assert.Equal(
            "Clock 'c', led by desk, has its own leader as backup; a, for one, could take over.",
            Assert.Single(RuleTester.Findings(Rule, Linked.With(Clock("c", "desk", "desk")))).Message
        );

    [Fact]
    public void A_backup_that_is_not_joined_is_none()
    {
        Expect.None(Rule, Linked.With(Clock("c", "desk", "a")));
        Assert.Equal(
            "Clock 'c', led by desk, has b as backup, which is not joined to it; a, for one, could take over.",
            Assert.Single(RuleTester.Findings(Rule, Linked.With(Clock("c", "desk", "b")))).Message
        );
    }

    [Fact]
    public void Clocks_of_networks_that_carry_nothing_and_names_that_do_not_resolve_are_left_alone()
    {
        Expect.None(Rule, Boxes("a").With(Clock("c", "desk")));
        Expect.None(Rule, Linked.With(Clock("c", "desk", "gone")));
        Expect.None(Rule, Linked.With(Clock("c", "gone")));
        Expect.None(Rule, Linked.With(Clock("c", "desk", "a"), Clock("d", "b")));
    }

    [Property]
    public Property Taking_the_backup_off_gives_exactly_one_warning_where_streams_travel() =>
        Prop.ForAll(
            ShowArbitraries.Clean(),
            clean =>
            {
                var show = clean.Show;
                var alone = show with { Rig = show.Rig with { Clocks = [show.Rig.Clocks[0] with { Backup = null }] } };

                Expect.None(Rule, show);
                Assert.Equal(show.Patch.Streams.IsEmpty ? [] : [Severity.Warning], RuleTester.Findings(Rule, alone).Select(finding => finding.Severity));
            }
        );
}
