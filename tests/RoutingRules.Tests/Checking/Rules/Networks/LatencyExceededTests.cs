using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Hearing;
using RoutingRules.Tests.Promises;
using RoutingRules.Tracing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class LatencyExceededTests
{
    private static readonly LatencyExceeded Rule = new();

    /// <summary>Bus to box output over 1 ms of packets; the box states the latency of its outputs.</summary>
    private static Show Fed(FeedRole role, double milliseconds, params string[] outputs) =>
        Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box))
            .WithProfile(
                "a",
                profile => profile with { LatencyMilliseconds = [new() { Group = new("out"), Value = milliseconds }, new() { Group = new("in"), Value = 1 }] }
            )
            .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4")) with
        {
            Feeds = [.. outputs.Select((output, position) => Feed($"f{position + 1}", role, $"desk/aux/{position + 1}", output))],
        };

    [Fact]
    public void A_feed_that_arrives_after_more_than_ten_milliseconds_is_told()
    {
        Expect.None(Rule, Fed(FeedRole.Monitor, 9, "a/out/1"));
        Expect.One(
            Rule,
            Fed(FeedRole.Monitor, 9.5, "a/out/1"),
            Severity.Warning,
            "/feeds/0/to/0",
            "Feed 'f1' arrives at a/out/1 10.5 ms after leaving its bus, later than 10 ms.",
            "device=a",
            "signal=feed",
            "at=a/out/1"
        );
    }

    [Fact]
    public void In_ear_feeds_have_half_the_time()
    {
        Expect.None(Rule, Fed(FeedRole.InEar, 4, "a/out/1"));
        Assert.Equal(
            "In-ear feed 'f1' arrives at a/out/1 5.5 ms after leaving its bus, later than 5 ms.",
            Assert.Single(RuleTester.Findings(Rule, Fed(FeedRole.InEar, 4.5, "a/out/1"))).Message
        );
    }

    [Theory]
    [InlineData("monitor")]
    [InlineData("stage-mix")]
    [InlineData("record")]
    public void So_has_whatever_ends_at_a_transmitter_rack(string role)
    {
        var show = Fed(new FeedRole(role), 4.5, "a/out/1");
        var cabled = show with
        {
            Rig = show.Rig with
            {
                Profiles = [.. show.Rig.Profiles, EarRig.Rack],
                Devices = [.. show.Rig.Devices, new() { Id = new("rack"), Profile = EarRig.Rack.Id }],
                Cables = [Cable("a/out/1", "rack/in/1")],
            },
        };

        Expect.None(Rule, show);
        Assert.StartsWith(
            "In-ear feed 'f1' arrives at rack/in/1, behind a/out/1, 5.5 ms after leaving its bus, later than 5 ms.",
            Assert.Single(RuleTester.Findings(Rule, cabled)).Message,
            StringComparison.Ordinal
        );
    }

    // 2 ms of presentation offset and 3.5 ms of outputs are 5.5 ms; the packet time of 1 ms is part of the offset.
    [Fact]
    public void A_receiver_buffer_that_the_network_states_counts()
    {
        var show = Fed(FeedRole.InEar, 3.5, "a/out/1");

        Expect.None(Rule, show);
        Assert.Equal(
            "In-ear feed 'f1' arrives at a/out/1 5.5 ms after leaving its bus, later than 5 ms.",
            Assert.Single(RuleTester.Findings(Rule, Offset(show, 2000))).Message
        );
        Expect.None(Rule, Offset(show, 1500));
        Expect.None(Rule, Offset(show, 100));
    }

    private static Show Offset(Show show, int microseconds) =>
        show with
        {
            Rig = show.Rig with { Networks = [show.Rig.Networks[0] with { PresentationOffsetMicroseconds = microseconds }] },
        };

    [Fact]
    public void Feeds_at_one_device_are_one_finding() =>
        Expect.One(
            Rule,
            Fed(FeedRole.Monitor, 12, "a/out/1", "a/out/2", "a/out/3"),
            Severity.Warning,
            "/feeds/0/to/0",
            "3 feeds arrive at a later than 10 ms; the latest is 'f1' at a/out/1 after 13 ms.",
            "device=a",
            "signal=feed",
            "at=a/out/1",
            "at=a/out/2",
            "at=a/out/3"
        );

    [Fact]
    public void Recordings_and_broadcasts_may_be_late()
    {
        Expect.None(Rule, Fed(FeedRole.Record, 50, "a/out/1"));
        Expect.None(Rule, Fed(FeedRole.Broadcast, 50, "a/out/1"));
    }

    [Fact]
    public void What_plays_the_feed_behind_the_output_counts_and_what_it_does_not_state_is_said()
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier))
            .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4")) with
        {
            Feeds = [FeedTo("f", FeedRole.Monitor, "desk/aux/1", "a")],
        };
        show = show with { Rig = show.Rig with { Cables = [Cable("a/out/1", "amp/in/1")] } };

        Expect.None(Rule, show);
        Assert.Equal(
            "Feed 'f' arrives at amp/out/1, behind a/out/1, 13 ms after leaving its bus, later than 10 ms. Parts whose latency is not stated count as 0.",
            Assert
                .Single(
                    RuleTester.Findings(
                        Rule,
                        show.WithProfile("amp", profile => profile with { Through = [profile.Through[0] with { LatencyMilliseconds = 12 }] })
                    )
                )
                .Message
        );
    }

    [Fact]
    public void A_line_counts_to_each_of_its_channels()
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box)).With(Stream("s", "a/transmit/1-4", "desk/receive/1-4")) with
        {
            Lines = [Line("voice", "a/in/1", "desk/channel/1")],
        };

        Expect.One(
            Rule,
            show.WithProfile("a", profile => profile with { LatencyMilliseconds = [new() { Group = new("in"), Value = 9.25 }] }),
            Severity.Warning,
            "/lines/0/to/0",
            "Line 'voice' arrives at desk/channel/1 10.25 ms after entering, later than 10 ms.",
            "device=desk",
            "signal=line",
            "at=desk/channel/1"
        );
        Expect.None(Rule, show.WithProfile("a", profile => profile with { LatencyMilliseconds = [new() { Group = new("in"), Value = 9 }] }));
    }

    [Fact]
    public void The_limits_can_be_set()
    {
        Assert.Single(Set(Rule, Fed(FeedRole.Monitor, 3, "a/out/1"), "maximumMilliseconds", 3.9));
        Assert.Empty(Set(Rule, Fed(FeedRole.InEar, 8, "a/out/1"), "maximumInEarMilliseconds", 9));
    }

    [Fact]
    public void A_packet_time_that_nothing_states_counts_as_nothing()
    {
        Expect.None(Rule, Fed(FeedRole.Monitor, 10, "a/out/1").With(new Transport("odd")));
        Assert.EndsWith(
            "Parts whose latency is not stated count as 0.",
            Assert.Single(RuleTester.Findings(Rule, Fed(FeedRole.Monitor, 11, "a/out/1").With(new Transport("odd")))).Message,
            StringComparison.Ordinal
        );
    }

    [Property(MaxTest = Promise.Cases)]
    public Property Sums_are_those_of_a_trace() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var resolved = Promise.Resolve(show);
                var wrong = new SumRule(resolved);
                var result = RuleTester.Run(wrong, show);
                foreach (var finding in result.Findings)
                {
                    var parts = finding.Message.Split(' ');
                    var traced = Tracer.Trace(resolved, resolved.Graph.Find(PointRange.Parse(parts[0])[0])).KnownLatencyMilliseconds ?? 0;
                    if (Math.Abs(traced - double.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture)) > 1e-9)
                    {
                        return $"{parts[0]}: {parts[1]} here, {traced} traced.";
                    }
                }

                return result.Undecided.IsEmpty ? null : result.Undecided[0].Reason;
            }
        );

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);

    /// <summary>Says the sum at every output.</summary>
    private sealed class SumRule(ResolvedShow show) : Rule<OutputSubject>
    {
        public override RuleDescriptor Descriptor { get; } = new LatencyExceeded().Descriptor with { Id = "ZZ9" };

        public override void Check(RuleContext context, OutputSubject subject)
        {
            var isPartial = false;
            if (!context.Origin(subject.Point).IsNone)
            {
                var sum = new SignalLatency(show, context).To(subject.Point, ref isPartial);
                context.Report(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{context.Address(subject.Point)} {sum:R}"), "");
            }
        }
    }
}
