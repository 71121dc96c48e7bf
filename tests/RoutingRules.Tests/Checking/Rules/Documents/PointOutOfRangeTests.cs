using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Documents;

public sealed class PointOutOfRangeTests
{
    private static readonly PointOutOfRange Rule = new();

    private static Show Base => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));

    [Fact]
    public void A_number_beyond_the_group_gives_one_finding_with_the_count() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/aux/9", "desk/transmit/1")),
            Severity.Error,
            "/patch/routes/0/from",
            "Device 'desk' has points 1 to 8 in 'aux', but desk/aux/9 is named in the route desk/aux/9 to desk/transmit/1.",
            "points=desk/aux/9",
            "named-in=route desk/aux/9 to desk/transmit/1/from"
        );

    [Fact]
    public void The_last_point_is_in_range() => Expect.None(Rule, Base.With(Route("desk/aux/8", "desk/transmit/8")));

    [Fact]
    public void A_run_named_in_several_places_is_one_finding_for_the_missing_points()
    {
        var show = Base.With(Route("desk/aux/7-10", "desk/transmit/5-8")) with
        {
            Feeds = [FeedTo("a", FeedRole.Monitor, "desk/aux/11", "box"), FeedTo("b", FeedRole.Monitor, "desk/aux/9", "box")],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/1/source",
            "Device 'desk' has points 1 to 8 in 'aux', but desk/aux/9-11 is named in feed 'b' and in 2 other places.",
            "points=desk/aux/9-11",
            "named-in=feed b/source",
            "named-in=route desk/aux/7-10 to desk/transmit/5-8/from",
            "named-in=feed a/source"
        );
    }

    [Fact]
    public void Two_runs_apart_are_two_findings() =>
        Assert.Equal(
            ["points=desk/aux/9", "points=desk/aux/11"],
            RuleTester
                .Findings(Rule, Base.With(Route("desk/aux/9", "desk/transmit/1"), Route("desk/aux/11", "desk/transmit/2")))
                .Select(finding => $"{finding.Entities[0].Role}={finding.Entities[0].Id}")
        );

    [Fact]
    public void Counts_follow_the_sample_rate()
    {
        var profile = SmallProfiles.Box with
        {
            PortGroups =
            [
                .. SmallProfiles.Box.PortGroups.Select(group =>
                    group.Id.Value == "transmit"
                        ? group with
                        {
                            Count = null,
                            CountByRate = [new() { SampleRate = 48_000, Count = 8 }, new() { SampleRate = 96_000, Count = 4 }],
                        }
                        : group
                ),
            ],
        };
        var show = Of(("desk", SmallProfiles.Console), ("box", profile)).With(Stream("s1", "box/transmit/5-8", "desk/receive/5-8"));

        Expect.None(Rule, show);
        Expect.One(
            Rule,
            show with
            {
                Rig = show.Rig with
                {
                    Clocks =
                    [
                        new()
                        {
                            Id = new("c"),
                            SampleRate = 96_000,
                            Leader = new("desk"),
                        },
                    ],
                },
            },
            Severity.Error,
            "/patch/streams/0/from",
            "Device 'box' has points 1 to 4 in 'transmit' at 96000 Hz, but box/transmit/5-8 is named in stream 's1'.",
            "points=box/transmit/5-8",
            "named-in=stream s1/from"
        );
    }

    [Fact]
    public void A_group_without_points_at_the_rate_says_so()
    {
        var profile = new DeviceProfile
        {
            Id = new("test/card"),
            Kind = DeviceKind.Processor,
            Name = "Test card",
            PortGroups =
            [
                new()
                {
                    Id = new("out"),
                    Kind = PortKind.Output,
                    CountByRate = [new() { SampleRate = 48_000, Count = 0 }],
                },
            ],
        };

        Expect.One(
            Rule,
            Of(("card", profile)) with
            {
                Patch = new() { Labels = [new() { At = At("card/out/1"), Text = "L" }] },
            },
            Severity.Error,
            "/patch/labels/0/at",
            "Device 'card' has no points in 'out' at 48000 Hz, but card/out/1 is named in the label 'L' at card/out/1.",
            "points=card/out/1",
            "named-in=label card/out/1/at"
        );
    }

    [Fact]
    public void Channels_beyond_the_stream_give_one_finding()
    {
        var stream = Stream("s1", "desk/transmit/1-4") with { To = [new() { At = At("box/receive/1-4"), Channels = new(3, 6) }] };

        Expect.One(
            Rule,
            Base.With(stream),
            Severity.Error,
            "/patch/streams/0/to/0/channels",
            "Stream 's1' has 4 channels, but box/receive/1-4 takes channels 3-6 of it.",
            "stream=s1",
            "receiver=box/receive/1-4",
            "channels=3-6"
        );
    }

    [Fact]
    public void A_device_with_an_unsound_profile_is_left_to_that_rule()
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

        Expect.None(Rule, Of(("desk", unsound)).With(Route("desk/aux/9", "desk/transmit/1")));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_has_none_and_one_number_too_high_gives_one(CleanShow clean, byte beyond)
    {
        var show = clean.Show with { Patch = clean.Show.Patch with { Labels = [new() { At = At($"box-2/out/{9 + beyond}"), Text = "X" }] } };

        Expect.None(Rule, clean.Show);
        Assert.Equal($"box-2/out/{9 + beyond}", Assert.Single(RuleTester.Findings(Rule, show)).Entities[0].Id);
    }
}
