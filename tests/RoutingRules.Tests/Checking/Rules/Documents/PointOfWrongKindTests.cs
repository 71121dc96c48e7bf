using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Documents;

public sealed class PointOfWrongKindTests
{
    private static readonly PointOfWrongKind Rule = new();

    private static Show Base => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));

    private static Show WithCable(string from, string to) => Base with { Rig = Base.Rig with { Cables = [Cable(from, to)] } };

    [Fact]
    public void A_route_between_two_devices_gives_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/aux/1", "box/out/1")),
            Severity.Error,
            "/patch/routes/0",
            "desk/aux/1 and box/out/1 are on two devices, but a route stays inside one. Between devices use a stream or a cable.",
            "from=desk/aux/1",
            "to=box/out/1"
        );

    [Fact]
    public void Eight_neighbouring_routes_with_one_fault_are_one_finding_in_any_order()
    {
        var routes = Enumerable.Range(1, 8).Select(n => Route($"desk/aux/{n}", $"box/out/{n}")).ToArray();

        Expect.One(
            Rule,
            Base.With([.. routes.Reverse()]),
            Severity.Error,
            "/patch/routes/0",
            "desk/aux/1-8 and box/out/1-8 are on two devices, but a route stays inside one. Between devices use a stream or a cable.",
            "from=desk/aux/1-8",
            "to=box/out/1-8"
        );
    }

    [Fact]
    public void A_route_into_a_bus_gives_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/in/1", "desk/aux/1")),
            Severity.Error,
            "/patch/routes/0",
            "A route cannot lead to desk/aux/1: it is a bus or another internal source, and takes no signal inside the device.",
            "from=desk/in/1",
            "to=desk/aux/1"
        );

    [Fact]
    public void A_route_that_clears_a_bus_gives_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Route(null, "desk/receive/1-2")),
            Severity.Error,
            "/patch/routes/0",
            "A route cannot lead to desk/receive/1-2: it is a receive slot, and takes no signal inside the device.",
            "to=desk/receive/1-2"
        );

    [Fact]
    public void A_route_from_an_output_gives_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/out/1", "desk/channel/1")),
            Severity.Error,
            "/patch/routes/0",
            "A route cannot start at desk/out/1: it is an output, and gives no signal inside the device.",
            "from=desk/out/1",
            "to=desk/channel/1"
        );

    [Fact]
    public void A_route_of_the_wrong_kind_and_of_unequal_ends_is_one_finding_about_the_kind()
    {
        var show = Base.With(Route("desk/out/1", "desk/channel/1-2"));

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/patch/routes/0",
            "A route cannot start at desk/out/1: it is an output, and gives no signal inside the device.",
            "from=desk/out/1",
            "to=desk/channel/1"
        );
        Expect.None(new WidthMismatch(), show);
    }

    [Fact]
    public void A_stream_from_a_bus_gives_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Stream("s1", "desk/aux/1-4", "box/receive/1-4")),
            Severity.Error,
            "/patch/streams/0/from",
            "Stream 's1' starts at desk/aux/1-4, which is a bus or another internal source; a stream starts at transmit slots of the network.",
            "stream=s1",
            "from=desk/aux/1-4"
        );

    [Fact]
    public void A_stream_to_outputs_gives_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4", "box/out/5-8")),
            Severity.Error,
            "/patch/streams/0/to/1/at",
            "Stream 's1' leads to box/out/5-8, which is an output; a stream leads to receive slots of the network.",
            "stream=s1",
            "receiver=box/out/5-8"
        );

    [Fact]
    public void A_stream_from_slots_of_a_digital_multicore_gives_one_finding()
    {
        var profile = SmallProfiles.Console with
        {
            PortGroups =
            [
                .. SmallProfiles.Console.PortGroups.Select(group => group.Id.Value == "transmit" ? group with { Carrier = new(new("net"), 1, 1) } : group),
            ],
        };

        Expect.One(
            Rule,
            Of(("desk", profile), ("box", SmallProfiles.Box)).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")),
            Severity.Error,
            "/patch/streams/0/from",
            "Stream 's1' starts at desk/transmit/1-4, which lives on the digital multicore jack desk/net/1, where the link is the stream; a stream "
                + "starts at transmit slots of the network.",
            "stream=s1",
            "from=desk/transmit/1-4"
        );
    }

    [Theory]
    [InlineData("desk/aux/1", "box/in/1", "A cable cannot start at desk/aux/1: it is a bus or another internal source, not an output.")]
    [InlineData("desk/out/1", "box/out/1", "A cable cannot lead to box/out/1: it is an output, not an input.")]
    public void A_cable_between_the_wrong_points_gives_one_finding(string from, string to, string message) =>
        Expect.One(Rule, WithCable(from, to), Severity.Error, "/rig/cables/0", message, $"from={from}", $"to={to}");

    [Theory]
    [InlineData("desk/net/1", "desk/net/2", "A link leads from one device to another, but desk/net/1 and desk/net/2 are on the same one.")]
    [InlineData("desk/net/1", "box/in/1", "A link cannot lead to box/in/1: it is an input, not a network jack.")]
    public void A_link_between_the_wrong_points_gives_one_finding(string from, string to, string message) =>
        Expect.One(
            Rule,
            Base with
            {
                Rig = Base.Rig with
                {
                    Links =
                    [
                        new()
                        {
                            Id = new("trunk"),
                            Network = new("net"),
                            From = At(from),
                            To = At(to),
                        },
                    ],
                },
            },
            Severity.Error,
            "/rig/links/0",
            message,
            $"from={from}",
            $"to={to}"
        );

    [Theory]
    [InlineData("desk/out/1", "an output")]
    [InlineData("desk/channel/1", "a channel or another internal sink")]
    [InlineData("desk/transmit/1", "a transmit slot")]
    [InlineData("desk/net/1", "a network jack")]
    public void A_feed_from_something_that_gives_no_signal_gives_one_finding(string source, string kind) =>
        Expect.One(
            Rule,
            Base with
            {
                Feeds = [FeedTo("mix", FeedRole.Monitor, source, "box")],
            },
            Severity.Error,
            "/feeds/0/source",
            $"Feed 'mix' starts at something that gives signal, but {source} is {kind}.",
            "feed=mix",
            $"at={source}"
        );

    [Fact]
    public void A_selector_may_be_the_source_of_a_feed()
    {
        var profile = SmallProfiles.Amplifier with
        {
            Through =
            [
                new()
                {
                    Kind = ThroughKind.Select,
                    From = new("in"),
                    To = new("out"),
                },
            ],
        };

        Expect.None(Rule, Of(("sel", profile), ("box", SmallProfiles.Box)) with { Feeds = [FeedTo("mix", FeedRole.Monitor, "sel/out/1", "box")] });
    }

    [Theory]
    [InlineData("desk/aux/2", "a bus or another internal source")]
    [InlineData("box/net/1", "a network jack")]
    public void A_feed_to_something_that_takes_no_signal_gives_one_finding(string at, string kind) =>
        Expect.One(
            Rule,
            Base with
            {
                Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", at)],
            },
            Severity.Error,
            "/feeds/0/to/0/at",
            $"Feed 'mix' ends at something that takes signal, but {at} is {kind}.",
            "feed=mix",
            $"at={at}"
        );

    [Theory]
    [InlineData("box/out/1", "box/out/1", "desk/channel/1", "/lines/0/from/at/0", "enters at an input, but box/out/1 is an output")]
    [InlineData(
        "desk/aux/1",
        "box/in/1",
        "desk/aux/1",
        "/lines/0/to/0",
        "ends at something that takes signal, but desk/aux/1 is a bus or another internal source"
    )]
    public void A_line_at_the_wrong_point_gives_one_finding(string at, string from, string to, string pointer, string part) =>
        Expect.One(Rule, Base with { Lines = [Line("kick", from, to)] }, Severity.Error, pointer, $"Line 'kick' {part}.", "line=kick", $"at={at}");

    [Fact]
    public void Input_settings_of_an_output_give_one_finding() =>
        Expect.One(
            Rule,
            Base with
            {
                Patch = new() { Inputs = [new() { At = At("box/out/1"), Phantom = true }] },
            },
            Severity.Error,
            "/patch/inputs/0/at",
            "The input settings of box/out/1 speak of inputs, but box/out/1 is an output.",
            "inputs=box/out/1",
            "at=box/out/1"
        );

    [Fact]
    public void Feeds_and_lines_may_end_at_any_sink_and_start_at_any_source()
    {
        var show = Base;
        Expect.None(
            Rule,
            show with
            {
                Feeds =
                [
                    Feed("a", FeedRole.Record, "desk/aux/1", "desk/transmit/1", "desk/out/1", "box/receive/1", "box/in/1", "desk/channel/1"),
                    FeedTo("b", FeedRole.Record, "box/in/2", "box"),
                    FeedTo("c", FeedRole.Record, "desk/receive/2", "box"),
                ],
                Lines = [Line("kick", "box/in/3", "desk/channel/2", "box/transmit/3", "box/out/3")],
            }
        );
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_has_none_and_one_stream_turned_round_gives_its_two_ends(CleanShow clean)
    {
        var stream = clean.Show.Patch.Streams[0] with { From = At("box-1/receive/1-4"), To = [new() { At = At("desk/transmit/1-4") }] };

        Expect.None(Rule, clean.Show);
        Assert.Equal(
            ["/patch/streams/0/from", "/patch/streams/0/to/0/at"],
            RuleTester.Findings(Rule, clean.Show with { Patch = clean.Show.Patch with { Streams = [stream] } }).Select(finding => finding.Pointer)
        );
    }
}
