using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Documents;

public sealed class ReferenceUnknownTests
{
    private static readonly ReferenceUnknown Rule = new();

    private static Show Base => Of(("desk", SmallProfiles.Console), ("box-r", SmallProfiles.Box));

    /// <summary>One show with every kind of reference and address, all of them good.</summary>
    private static Show Full
    {
        get
        {
            var show = Base;
            return show with
            {
                Rig = show.Rig with
                {
                    Zones = [new() { Id = new("left"), Near = [new("right")] }, new() { Id = new("right") }],
                    Clocks =
                    [
                        new()
                        {
                            Id = new("c1"),
                            SampleRate = 48_000,
                            Leader = new("desk"),
                            Backup = new("box-r"),
                        },
                    ],
                    Networks = [show.Rig.Networks[0] with { Clock = new("c1") }],
                    Devices = [show.Rig.Devices[0], show.Rig.Devices[1] with { Zone = new("left") }],
                    Links =
                    [
                        new()
                        {
                            Id = new("trunk"),
                            Network = new("net"),
                            From = At("desk/net/1"),
                            To = At("box-r/net/1"),
                        },
                    ],
                    Cables = [Cable("desk/out/1", "box-r/in/1")],
                    Unavailable = [new() { At = At("box-r/in/7") }],
                    Reserved = [new() { At = At("box-r/out/8") }],
                },
                Feeds =
                [
                    Feed("a", FeedRole.Monitor, "desk/aux/1", "box-r/out/1"),
                    FeedTo("b", FeedRole.Monitor, "desk/aux/2", "box-r") with
                    {
                        BackupOf = new("a"),
                        SeparateFrom = [new() { Feed = new("a"), By = SeparationBy.Device }],
                    },
                    new()
                    {
                        Id = new("c"),
                        Role = FeedRole.Fill,
                        Source = At("desk/aux/3"),
                        To = [new() { Zones = [new("left")] }],
                    },
                ],
                Lines =
                [
                    Line("kick", "box-r/in/2", "desk/channel/1"),
                    new()
                    {
                        Id = new("any"),
                        Kind = LineKind.Line,
                        From = new() { Devices = [new("box-r")], Zones = [new("right")] },
                        To = [At("desk/channel/2")],
                    },
                    new()
                    {
                        Id = new("born"),
                        Kind = LineKind.Line,
                        From = new() { Source = At("desk/in/1") },
                        To = [At("desk/channel/3")],
                    },
                ],
                Patch = new()
                {
                    Streams = [Stream("s1", "desk/transmit/1-4", "box-r/receive/1-4")],
                    Routes = [Route("desk/aux/1", "desk/transmit/1"), Route(null, "desk/transmit/4")],
                    Inputs =
                    [
                        new()
                        {
                            At = At("box-r/in/2"),
                            GainOwner = new("desk"),
                            GainFollowers = [new("box-r")],
                        },
                    ],
                    Labels = [new() { At = At("desk/channel/1"), Text = "KICK" }],
                },
            };
        }
    }

    [Fact]
    public void A_route_of_a_missing_device_gives_one_finding_with_the_nearest_name() =>
        Expect.One(
            Rule,
            Base.With(Route("dask/aux/1", "desk/transmit/1")),
            Severity.Error,
            "/patch/routes/0/from",
            "There is no device 'dask' in the rig, but it is named in the route dask/aux/1 to desk/transmit/1. Did you mean 'desk'?",
            "device=dask",
            "named-in=route dask/aux/1 to desk/transmit/1/from"
        );

    [Fact]
    public void A_missing_port_group_is_named_with_its_device() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/auxes/1", "desk/transmit/1")),
            Severity.Error,
            "/patch/routes/0/from",
            "Device 'desk' has no port group 'auxes', but it is named in the route desk/auxes/1 to desk/transmit/1. Did you mean 'aux'?",
            "group=desk/auxes",
            "named-in=route desk/auxes/1 to desk/transmit/1/from"
        );

    [Fact]
    public void One_missing_device_named_in_many_places_is_one_finding()
    {
        var show = Full with
        {
            Feeds = [Feed("a", FeedRole.Monitor, "desk/aux/1", "gone-box/out/1", "gone-box/out/2"), FeedTo("b", FeedRole.Fill, "desk/aux/2", "gone-box")],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/1/to/0/devices/0",
            "There is no device 'gone-box' in the rig, but it is named in feed 'b' and in 2 other places.",
            "device=gone-box",
            "named-in=feed b/to/devices",
            "named-in=feed a/to/at",
            "named-in=feed a/to/at (2)"
        );
    }

    [Fact]
    public void A_show_with_every_kind_of_reference_is_clean() => Expect.None(Rule, Full);

    public static TheoryData<string, string> EveryPlace =>
        new()
        {
            { "/rig/zones/0/near/0", "zone=x-9" },
            { "/rig/clocks/0/leader", "device=x-9" },
            { "/rig/clocks/0/backup", "device=x-9" },
            { "/rig/networks/0/clock", "clock=x-9" },
            { "/rig/devices/1/zone", "zone=x-9" },
            { "/rig/links/0/network", "network=x-9" },
            { "/rig/links/0/from", "device=x-9" },
            { "/rig/links/0/to", "group=box-r/x-9" },
            { "/rig/cables/0/from", "device=x-9" },
            { "/rig/cables/0/to", "group=box-r/x-9" },
            { "/rig/unavailable/0/at", "group=box-r/x-9" },
            { "/rig/reserved/0/at", "device=x-9" },
            { "/feeds/0/source", "group=desk/x-9" },
            { "/feeds/0/to/0/at", "device=x-9" },
            { "/feeds/1/to/0/devices/0", "device=x-9" },
            { "/feeds/2/to/0/zones/0", "zone=x-9" },
            { "/feeds/1/separateFrom/0/feed", "feed=x-9" },
            { "/feeds/1/backupOf", "feed=x-9" },
            { "/lines/0/from/at/0", "group=box-r/x-9" },
            { "/lines/0/to/0", "device=x-9" },
            { "/lines/1/from/devices/0", "device=x-9" },
            { "/lines/1/from/zones/0", "zone=x-9" },
            { "/lines/2/from/source", "device=x-9" },
            { "/patch/streams/0/network", "network=x-9" },
            { "/patch/streams/0/from", "device=x-9" },
            { "/patch/streams/0/to/0/at", "device=x-9" },
            { "/patch/routes/0/from", "group=desk/x-9" },
            { "/patch/routes/0/to", "group=desk/x-9" },
            { "/patch/routes/1/to", "device=x-9" },
            { "/patch/inputs/0/at", "device=x-9" },
            { "/patch/inputs/0/gainOwner", "device=x-9" },
            { "/patch/inputs/0/gainFollowers/0", "device=x-9" },
            { "/patch/labels/0/at", "device=x-9" },
        };

    [Theory]
    [MemberData(nameof(EveryPlace))]
    public void Breaking_one_reference_gives_one_finding_at_its_place(string pointer, string entity)
    {
        var finding = Assert.Single(RuleTester.Findings(Rule, JsonEdit.Break(Full, pointer, entity)));

        Assert.Equal(pointer, finding.Pointer);
        Assert.Equal(entity, $"{finding.Entities[0].Role}={finding.Entities[0].Id}");
    }

    [Fact]
    public void Points_of_a_device_without_a_profile_are_left_to_the_rule_about_profiles()
    {
        var show = Base.With(Route("desk/aux/1", "desk/transmit/1"));

        Expect.None(Rule, show with { Rig = show.Rig with { Profiles = [] } });
    }

    [Fact]
    public void Groups_of_a_device_with_an_unsound_profile_are_left_to_the_rule_about_profiles()
    {
        var unsound = SmallProfiles.Console with
        {
            Through =
            [
                new()
                {
                    Kind = ThroughKind.Process,
                    From = new("nowhere"),
                    To = new("out"),
                },
            ],
        };

        Expect.None(Rule, Of(("desk", unsound)).With(Route("desk/auxes/1", "desk/transmit/1")));
    }

    [Property]
    public void Renaming_and_the_order_of_lists_keep_the_identity(string title)
    {
        var show = Full with { Feeds = [Feed("a", FeedRole.Monitor, "desk/aux/1", "gone/out/1"), Feed("b", FeedRole.Monitor, "desk/bux/2", "box-r/out/2")] };

        Assert.Equal(Expect.Fingerprints(Rule, show), Expect.Fingerprints(Rule, show with { Title = title ?? "", Feeds = show.Feeds.Reverse().ToValueList() }));
    }
}
