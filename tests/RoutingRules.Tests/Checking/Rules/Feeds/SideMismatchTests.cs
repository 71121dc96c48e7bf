using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class SideMismatchTests
{
    private static readonly SideMismatch Rule = new();

    /// <summary>Main left and right in one stream to both boxes: box-r stands stage right, box-l stage left.</summary>
    private static Show Rig(ZoneSide right = ZoneSide.HouseLeft, ZoneSide left = ZoneSide.HouseRight, DeviceProfile? leftProfile = null)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box-r", SmallProfiles.Box), ("box-l", leftProfile ?? SmallProfiles.Box));
        show = show.With(Route("desk/main/1-2", "desk/transmit/1-2")).With(Stream("s1", "desk/transmit/1-4", "box-r/receive/1-4", "box-l/receive/1-4"));
        return show with
        {
            Rig = show.Rig with
            {
                Zones = [new() { Id = new("stage-right"), Side = right }, new() { Id = new("stage-left"), Side = left }],
                Devices = [show.Rig.Devices[0], show.Rig.Devices[1] with { Zone = new("stage-right") }, show.Rig.Devices[2] with { Zone = new("stage-left") }],
            },
        };
    }

    private static Feed Part(string part, string at, string? set = null) =>
        Feed($"main-{part}", FeedRole.Main, part == "left" ? "desk/main/1" : "desk/main/2", at) with
        {
            Part = part,
            Set = set,
        };

    [Fact]
    public void A_left_feed_at_house_right_gives_one_finding() =>
        Expect.One(
            Rule,
            Rig() with
            {
                Feeds = [Part("left", "box-l/out/1")],
            },
            Severity.Warning,
            "/feeds/0/to/0",
            "On the wrong side of the house: 'main-left' (left) at box-l/out/1, house right (stage left).",
            "feed=main-left",
            "device=box-l"
        );

    [Fact]
    public void Left_at_house_left_and_right_at_house_right_give_none() =>
        Expect.None(Rule, Rig() with { Feeds = [Part("left", "box-r/out/1"), Part("right", "box-l/out/2")] });

    [Fact]
    public void A_set_exchanged_left_for_right_gives_one_finding() =>
        Expect.One(
            Rule,
            Rig() with
            {
                Feeds = [Part("right", "box-r/out/2", "main"), Part("left", "box-l/out/1", "main")],
            },
            Severity.Warning,
            "/feeds/0/to/0",
            "On the wrong side of the house: 'main-right' (right) at box-r/out/2, house left (stage right); "
                + "'main-left' (left) at box-l/out/1, house right (stage left).",
            "set=main",
            "feed=main-left",
            "device=box-l",
            "feed=main-right",
            "device=box-r"
        );

    [Theory]
    [InlineData(ZoneSide.Centre)]
    [InlineData(ZoneSide.None)]
    public void A_device_without_a_side_gives_none(ZoneSide side) => Expect.None(Rule, Rig(left: side) with { Feeds = [Part("left", "box-l/out/1")] });

    [Fact]
    public void Without_a_line_output_on_the_right_side_there_is_no_better_place()
    {
        Expect.None(Rule, Rig(right: ZoneSide.Centre) with { Feeds = [Part("left", "box-l/out/1")] });
        var show = Rig() with { Feeds = [Part("right", "box-r/out/2")] };
        Expect.None(
            Rule,
            show with
            {
                Rig = show.Rig with
                {
                    Devices = [show.Rig.Devices[0], show.Rig.Devices[1], show.Rig.Devices[2] with { Profile = SmallProfiles.Amplifier.Id }],
                    Profiles = [.. show.Rig.Profiles, SmallProfiles.Amplifier],
                },
            }
        );
    }

    [Fact]
    public void Only_loudspeakers_of_the_house_have_a_side()
    {
        Expect.None(Rule, Rig() with { Feeds = [Part("left", "box-l/out/1") with { Role = FeedRole.InEar }] });
        Expect.None(Rule, Rig() with { Feeds = [Part("left", "box-l/out/1") with { Role = FeedRole.Monitor }] });
        Expect.None(Rule, Rig() with { Feeds = [Part("centre", "box-l/out/2")] });
        Expect.None(Rule, Rig() with { Feeds = [Feed("pa", FeedRole.Main, "desk/main/1-2", "box-l/out/1-2") with { Part = "left" }] });
    }

    [Fact]
    public void A_feed_that_is_not_delivered_is_left_to_its_own_rule() => Expect.None(Rule, Rig() with { Feeds = [Part("left", "box-l/out/5")] });

    [Fact]
    public void A_feed_pinned_behind_a_cable_is_judged_where_it_is_pinned()
    {
        var show = Rig();
        show = show with
        {
            Rig = show.Rig with
            {
                Devices =
                [
                    .. show.Rig.Devices,
                    new()
                    {
                        Id = new("amp"),
                        Profile = SmallProfiles.Amplifier.Id,
                        Zone = new("stage-right"),
                    },
                ],
                Profiles = [.. show.Rig.Profiles, SmallProfiles.Amplifier],
                Cables = [Cable("box-l/out/1", "amp/in/1")],
            },
            Feeds = [Part("left", "amp/in/1")],
        };

        Expect.None(Rule, show);
    }

    /// <summary>A console in the middle and two amplifiers on the network, or cabled to a box in the middle, at the two sides.</summary>
    private static Show Amplifiers(DeviceProfile profile, string left, string right, string atLeft, string atRight, params Cable[] cables)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("amp-a", profile), ("amp-b", profile))
            .With(Route("desk/main/1-2", "desk/transmit/1-2"))
            .With(
                Stream(
                    "s1",
                    "desk/transmit/1-4",
                    [.. new[] { "box", "amp-a", "amp-b" }.Take(cables.Length > 0 ? 1 : 3).Select(device => $"{device}/receive/1-4")]
                )
            );
        return show with
        {
            Rig = show.Rig with
            {
                Zones = [new() { Id = new("stage-right"), Side = ZoneSide.HouseLeft }, new() { Id = new("stage-left"), Side = ZoneSide.HouseRight }],
                Devices =
                [
                    show.Rig.Devices[0],
                    show.Rig.Devices[1],
                    show.Rig.Devices[2] with
                    {
                        Zone = new(left),
                    },
                    show.Rig.Devices[3] with
                    {
                        Zone = new(right),
                    },
                ],
                Cables = cables.ToValueList(),
            },
            Feeds = [Part("left", atLeft, "main"), Part("right", atRight, "main")],
        };
    }

    private static DeviceProfile NetworkAmplifier { get; } =
        new()
        {
            Id = new("test/network-amplifier"),
            Kind = DeviceKind.Amplifier,
            Name = "Test network amplifier",
            PortGroups =
            [
                SmallProfiles.Group("out", PortKind.Output, 4) with
                {
                    Level = SignalLevel.Speaker,
                },
                SmallProfiles.Group("receive", PortKind.Receive, 8) with
                {
                    BlockSize = 4,
                },
            ],
            Routing = [SmallProfiles.Entry("receive", "out", RoutingMode.Free)],
            FactoryRoutes = [SmallProfiles.Factory("receive", 1, 4, "out", 1)],
        };

    [Fact]
    public void Network_amplifiers_with_exchanged_zones_are_one_finding()
    {
        Expect.One(
            Rule,
            Amplifiers(NetworkAmplifier, "stage-left", "stage-right", "amp-a/receive/1", "amp-b/receive/2"),
            Severity.Warning,
            "/feeds/0/to/0",
            "On the wrong side of the house: 'main-left' (left) at amp-a/out/1, house right (stage left); 'main-right' (right) at amp-b/out/2, "
                + "house left (stage right).",
            "set=main",
            "feed=main-left",
            "device=amp-a",
            "feed=main-right",
            "device=amp-b"
        );
        Expect.None(Rule, Amplifiers(NetworkAmplifier, "stage-right", "stage-left", "amp-a/receive/1", "amp-b/receive/2"));
    }

    [Fact]
    public void Amplifiers_and_powered_loudspeakers_behind_a_box_in_the_middle_count_by_their_own_zones()
    {
        var powered = new DeviceProfile
        {
            Id = new("test/powered"),
            Kind = DeviceKind.Loudspeaker,
            Name = "Test loudspeaker",
            PortGroups = [SmallProfiles.Group("in", PortKind.Input, 2)],
        };
        Cable[] cables = [Cable("box/out/1", "amp-a/in/1"), Cable("box/out/2", "amp-b/in/2")];
        foreach (var profile in new[] { SmallProfiles.Amplifier, powered })
        {
            Assert.Single(RuleTester.Findings(Rule, Amplifiers(profile, "stage-left", "stage-right", "box/out/1", "box/out/2", cables)));
            Assert.Single(RuleTester.Findings(Rule, Amplifiers(profile, "stage-left", "stage-right", "amp-a/in/1", "amp-b/in/2", cables)));
            Expect.None(Rule, Amplifiers(profile, "stage-right", "stage-left", "box/out/1", "box/out/2", cables));
        }
    }

    [Fact]
    public void A_feed_that_is_heard_on_its_own_side_as_well_is_none() =>
        Expect.None(
            Rule,
            Amplifiers(
                SmallProfiles.Amplifier,
                "stage-left",
                "stage-right",
                "box/out/1",
                "box/out/2",
                Cable("box/out/1", "amp-a/in/1"),
                Cable("box/out/1", "amp-b/in/1"),
                Cable("box/out/2", "amp-a/in/2"),
                Cable("box/out/2", "amp-b/in/2")
            )
        );
}
