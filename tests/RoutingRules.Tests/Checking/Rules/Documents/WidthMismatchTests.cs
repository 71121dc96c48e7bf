using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Documents;

public sealed class WidthMismatchTests
{
    private static readonly WidthMismatch Rule = new();

    private static Show Base => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));

    [Fact]
    public void A_route_of_unequal_ends_gives_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/aux/1-4", "desk/transmit/1-3")),
            Severity.Error,
            "/patch/routes/0",
            "The route from desk/aux/1-4 to desk/transmit/1-3 joins 4 points to 3 points; nothing is connected.",
            "from=desk/aux/1-4",
            "to=desk/transmit/1-3"
        );

    [Fact]
    public void A_cable_of_unequal_ends_gives_one_finding()
    {
        var show = Base;
        Expect.One(
            Rule,
            show with
            {
                Rig = show.Rig with { Cables = [Cable("desk/out/1", "box/in/1-2")] },
            },
            Severity.Error,
            "/rig/cables/0",
            "The cable from desk/out/1 to box/in/1-2 joins 1 point to 2 points; nothing is connected.",
            "from=desk/out/1",
            "to=box/in/1-2"
        );
    }

    [Theory]
    [InlineData(null, "box/receive/1-8", "box/receive/1-8 has 8 points but takes all of its channels of stream 's1', which makes 4; nothing arrives there.")]
    [InlineData("1-2", "box/receive/1-4", "box/receive/1-4 has 4 points but takes channels 1-2 of stream 's1', which makes 2; nothing arrives there.")]
    public void A_receiver_of_another_width_gives_one_finding(string? channels, string at, string message)
    {
        NumberRange? range = channels is not null && NumberRange.TryParse(channels, out var parsed, out _) ? parsed : null;
        var stream = Stream("s1", "desk/transmit/1-4", "box/receive/5-8");
        stream = stream with { To = [.. stream.To, new() { At = At(at), Channels = range }] };

        Expect.One(Rule, Base.With(stream), Severity.Error, "/patch/streams/0/to/1", message, "stream=s1", $"receiver={at}");
    }

    [Fact]
    public void A_link_between_several_jacks_gives_one_finding()
    {
        var show = Base;
        Expect.One(
            Rule,
            show with
            {
                Rig = show.Rig with
                {
                    Links =
                    [
                        new()
                        {
                            Id = new("trunk"),
                            Network = new("net"),
                            From = At("desk/net/1-2"),
                            To = At("box/net/1-2"),
                        },
                    ],
                },
            },
            Severity.Error,
            "/rig/links/0",
            "Link 'trunk' joins desk/net/1-2 to box/net/1-2; a link is one network cable between one jack and one jack.",
            "link=trunk"
        );
    }

    [Fact]
    public void A_feed_wider_than_a_pair_gives_one_finding_and_its_destinations_none() =>
        Expect.One(
            Rule,
            Base with
            {
                Feeds = [Feed("a", FeedRole.Monitor, "desk/aux/1-3", "box/out/1")],
            },
            Severity.Error,
            "/feeds/0/source",
            "The source of feed 'a', desk/aux/1-3, is 3 buses wide; a feed is one bus, or two for a pair. Split it into several feeds.",
            "feed=a",
            "source=desk/aux/1-3"
        );

    [Fact]
    public void A_pair_pinned_to_one_point_gives_one_finding() =>
        Expect.One(
            Rule,
            Base with
            {
                Feeds = [Feed("a", FeedRole.InEar, "desk/aux/1-2", "box/out/1-2", "box/out/3")],
            },
            Severity.Error,
            "/feeds/0/to/1",
            "Source desk/aux/1-2 of feed 'a' has 2 points, but box/out/3, where it shall arrive, has 1 point.",
            "feed=a",
            "at=box/out/3"
        );

    [Theory]
    [InlineData("/lines/0/from/at/0", "box/in/1", "box/in/1", "desk/channel/1-2")]
    [InlineData("/lines/0/to/0", "desk/channel/1-3", "box/in/1-2", "desk/channel/1-3")]
    public void A_stereo_line_with_another_width_gives_one_finding(string pointer, string at, string from, string to) =>
        Expect.One(
            Rule,
            Base with
            {
                Lines = [Line("keys", from, to) with { Name = "Keys", Width = 2 }],
            },
            Severity.Error,
            pointer,
            $"Stereo line 'Keys' needs 2 points, but {at} has {At(at).Width} point{(At(at).Width == 1 ? "" : "s")}.",
            "line=keys",
            $"at={at}"
        );

    [Fact]
    public void A_source_of_a_line_with_another_width_gives_one_finding() =>
        Expect.One(
            Rule,
            Base with
            {
                Lines =
                [
                    new()
                    {
                        Id = new("player"),
                        Kind = LineKind.Line,
                        From = new() { Source = At("desk/in/1-2") },
                        To = [At("desk/channel/1")],
                    },
                ],
            },
            Severity.Error,
            "/lines/0/from/source",
            "Mono line 'player' needs 1 point, but desk/in/1-2 has 2 points.",
            "line=player",
            "at=desk/in/1-2"
        );

    [Fact]
    public void Null_routes_of_any_width_and_equal_widths_give_none()
    {
        var show = Base.With(Route(null, "desk/transmit/1-8"), Route("desk/main/1-2", "desk/out/1-2"));
        Expect.None(
            Rule,
            show.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")) with
            {
                Feeds = [Feed("m", FeedRole.Main, "desk/main/1-2", "desk/out/1-2")],
            }
        );
    }

    [Fact]
    public void Ends_that_do_not_resolve_are_left_to_other_rules()
    {
        var show = Base.With(Route("desk/aux/1-9", "desk/transmit/1"), Route("dask/aux/1-2", "desk/transmit/2"));
        Expect.None(
            Rule,
            show with
            {
                Feeds = [Feed("a", FeedRole.Monitor, "desk/aux/1", "box/out/8-9"), Feed("b", FeedRole.Monitor, "desk/aux/7-9", "box/out/1")],
            }
        );
    }

    [Fact]
    public void The_same_bad_route_written_twice_is_one_finding() =>
        Assert.Single(RuleTester.Findings(Rule, Base.With(Route("desk/aux/1-4", "desk/transmit/1-3"), Route("desk/aux/1-4", "desk/transmit/1-3"))));

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_has_none_and_one_receiver_too_narrow_gives_one(CleanShow clean)
    {
        var stream = clean.Show.Patch.Streams[0];
        var receiver = stream.To[0];
        var narrow = receiver with { At = new PointRange(receiver.At.Device, receiver.At.Group, receiver.At.First, receiver.At.Last - 1) };
        var broken = stream with { To = [narrow, .. stream.To.Skip(1)] };

        Expect.None(Rule, clean.Show);
        Assert.Equal(
            "/patch/streams/0/to/0",
            Assert
                .Single(
                    RuleTester.Findings(Rule, clean.Show with { Patch = clean.Show.Patch with { Streams = [broken, .. clean.Show.Patch.Streams.Skip(1)] } })
                )
                .Pointer
        );
    }
}
