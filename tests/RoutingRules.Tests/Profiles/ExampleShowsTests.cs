using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Profiles.Generic;
using RoutingRules.Resolving;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Tests.Profiles;

/// <summary>The published example shows read, resolve with the generic profiles and hold what they promise.</summary>
public class ExampleShowsTests
{
    private const string ByHand = "festival-by-hand.show.json";
    private const string Mistakes = "05-festival-mistakes.show.json";
    private static readonly ProfileLibrary Library = new([new GenericProfiles()]);

    public static TheoryData<string> All { get; } = new(Names);

    /// <summary>All but the one that is wrong on purpose.</summary>
    public static TheoryData<string> Sound { get; } = new(Names.Where(name => name != Mistakes));

    private static IEnumerable<string> Names =>
        Directory.GetFiles(Folder, "*.show.json").Select(path => Path.GetFileName(path)).OrderBy(name => name, StringComparer.Ordinal);

    private static string Folder => Path.Combine(AppContext.BaseDirectory, "examples");

    [Theory]
    [MemberData(nameof(All))]
    public void An_example_reads_without_a_finding(string name)
    {
        Assert.Empty(ShowReader.ReadFile(Path.Combine(Folder, name)).Findings.Select(finding => finding.Message));
    }

    [Theory]
    [MemberData(nameof(Sound))]
    public void Everything_an_example_names_exists(string name)
    {
        var show = Resolve(name);

        Assert.All(show.Document.Rig.Devices, device => Assert.NotNull(Library.Find(device.Profile)));
        Assert.All(show.Devices, device => Assert.NotNull(device.Zone));
        Assert.All(show.Cables, cable => Assert.Equal(ConnectionState.Connected, cable.State));
        Assert.All(show.Links, link => Assert.Equal(ConnectionState.Connected, link.State));
        Assert.All(show.Routes, route => Assert.Equal(ConnectionState.Connected, route.State));
        Assert.All(show.Streams, stream => Assert.Equal(ConnectionState.Connected, stream.State));
        Assert.All(show.Streams.SelectMany(stream => stream.Receivers), receiver => Assert.Equal(ConnectionState.Connected, receiver.State));
        Assert.All(show.Feeds, feed => Assert.Equal(ConnectionState.Connected, feed.SourceState));
        Assert.All(show.Lines, line => Assert.DoesNotContain(PointIndex.None, line.Sinks));
        Assert.All(show.Demands, demand => Assert.NotEmpty(demand.Allowed));
        Assert.Empty(show.IdleRoutes);
    }

    [Theory]
    [InlineData("01-smallest.show.json")]
    [InlineData("02-club-night.show.json")]
    [InlineData(ByHand)]
    public void A_complete_example_serves_every_feed_and_every_line(string name)
    {
        var show = Resolve(name);

        Assert.Empty(show.Demands.Where(demand => demand.Existing.IsNone).Select(demand => demand.Key));
        Assert.Empty(show.Conflicts);
        foreach (var line in show.Lines)
        {
            var points = show.Demands[line.Demand].Allowed;
            Assert.All(line.Sinks, sink => Assert.Contains(show.Graph.Origin(sink), points));
        }
    }

    [Fact]
    public void The_club_patch_sounds_the_mains_and_two_monitors_and_nothing_else()
    {
        // Written down from the document, not computed.
        string[] expected = ["desk/main/1", "desk/main/2", "desk/aux/1", "desk/aux/2", "", "", "", "", "", ""];

        var graph = Resolve("02-club-night.show.json").Graph;

        for (var number = 1; number <= expected.Length; number++)
        {
            var origin = graph.Origin(graph.Find(new Point(new("box"), new("out"), number)));
            Assert.Equal(expected[number - 1], origin.IsNone ? "" : graph.Address(origin).ToString());
        }
    }

    [Theory]
    [InlineData("03-two-boxes.show.json")]
    [InlineData("04-festival.show.json")]
    public void An_example_for_assignment_leaves_everything_to_do(string name)
    {
        var show = Resolve(name);

        Assert.Empty(show.Demands.Where(demand => !demand.Existing.IsNone).Select(demand => demand.Key));
        Assert.True(show.Demands.Count >= 18);
    }

    [Fact]
    public void The_festival_shows_what_a_festival_has()
    {
        var show = Resolve("04-festival.show.json").Document;
        var kinds = show.Rig.Devices.Select(device => Library.Find(device.Profile)!.Value!.Kind).ToArray();

        Assert.Equal(2, kinds.Count(kind => kind == DeviceKind.Console));
        Assert.InRange(kinds.Count(kind => kind == DeviceKind.StageBox), 4, 6);
        Assert.Equal(2, show.Rig.Networks.Select(network => network.Transport).Distinct().Count());
        Assert.InRange(show.Lines.Count, 40, 100);
        Assert.InRange(show.Feeds.Count(feed => feed.Role == FeedRole.Monitor || feed.Role == FeedRole.InEar), 12, 30);
        Assert.Contains(show.Lines, line => line.From.Source is not null);
        Assert.Contains(show.Lines, line => line.From.At.Count == 2);
        Assert.NotEmpty(show.Rig.Unavailable);
        Assert.NotEmpty(show.Rig.Reserved);
        Assert.Contains(show.Feeds, feed => !feed.SeparateFrom.IsEmpty);
        Assert.Contains(show.Feeds, feed => feed.Preferred is not null);
        Assert.Contains(show.Patch.Streams, stream => stream.Keep);
    }

    [Fact]
    public void The_festival_patched_by_hand_is_the_festival_of_the_example()
    {
        // So the patch by hand proves that the example can be placed whole.
        var example = Resolve("04-festival.show.json").Document;
        var byHand = Resolve(ByHand).Document;

        Assert.Equal(example.Rig, byHand.Rig);
        Assert.Equal(example.Feeds, byHand.Feeds);
        Assert.Equal(example.Lines, byHand.Lines);
        Assert.Contains(byHand.Patch.Streams, stream => stream.Keep && stream.From == example.Patch.Streams[0].From);
    }

    [Fact]
    public void The_festival_patched_by_hand_uses_no_dead_point_and_sounds_no_stray_on_a_stage_box()
    {
        var show = Resolve(ByHand);
        var intended = new HashSet<PointIndex>();
        foreach (var demand in show.Demands)
        {
            for (var position = 0; position < demand.Width; position++)
            {
                Assert.Null(show.MarkOf(demand.Existing + position));
                Assert.True(intended.Add(demand.Existing + position), $"{demand.Key} shares a point");
            }
        }

        foreach (var device in show.Devices.Where(device => device.Profile.Kind == DeviceKind.StageBox))
        {
            var group = device.Group(new("out"))!;
            for (var number = 0; number < group.Count; number++)
            {
                var output = device.First(group) + number;
                Assert.True(intended.Contains(output) || show.Graph.Origin(output).IsNone, $"{show.Graph.Address(output)} sounds what nobody asked for");
            }
        }
    }

    [Fact]
    public void The_mistakes_change_what_their_places_carry_and_nothing_else()
    {
        // Worked out by hand from the list of mistakes beside the examples. An input that no cable feeds stands for what is plugged into it.
        string[] expected =
        [
            "desk-h/channel/39: box-c/in/16 becomes silence",
            "desk-m/channel/9: box-c/in/9 becomes box-c/in/10",
            "desk-m/channel/10: box-c/in/10 becomes box-c/in/9",
            "desk-m/channel/25: box-r/in/9 becomes box-r/in/5",
            "desk-m/channel/26: box-r/in/10 becomes box-r/in/6",
            "box-r/out/3: desk-h/matrix/1 becomes desk-h/matrix/2",
            "box-r/out/6: desk-m/aux/15 becomes silence",
            "box-c/out/6: silence becomes desk-m/aux/26",
            "box-l/out/2: desk-h/aux/1 becomes silence",
            "box-l/out/3: desk-h/matrix/2 becomes desk-h/matrix/1",
            "amp-f/out/1: desk-h/matrix/3 becomes amp-f/in/1",
            "amp-f/out/2: desk-h/matrix/4 becomes amp-f/in/2",
            "loop-amp/out/2: loop-amp/in/2 becomes amp-d/in/3",
            "rec/track/9: rack-w/receiver/1 becomes silence",
            "rec/track/10: rack-w/receiver/2 becomes silence",
            "rec/track/11: rack-w/receiver/3 becomes rack-w/receiver/1",
            "rec/track/12: rack-w/receiver/4 becomes rack-w/receiver/2",
            "rec/track/13: rack-w/receiver/5 becomes rack-w/receiver/3",
            "rec/track/14: rack-w/receiver/6 becomes rack-w/receiver/4",
            "rec/track/15: rack-w/receiver/7 becomes rack-w/receiver/5",
            "rec/track/16: rack-w/receiver/8 becomes rack-w/receiver/6",
            "rec/track/17: silence becomes rack-w/receiver/7",
            "rec/track/18: silence becomes rack-w/receiver/8",
        ];
        var right = Resolve(ByHand).Graph;
        var wrong = Resolve(Mistakes).Graph;

        var changed = Enumerable
            .Range(0, right.PointCount)
            .Select(index => new PointIndex(index))
            .Where(point => right.GroupOf(point).Kind is PortKind.Output or PortKind.Sink && Carries(right, point) != Carries(wrong, point))
            .Select(point => $"{right.Address(point)}: {Carries(right, point)} becomes {Carries(wrong, point)}");

        Assert.Equal(expected, changed);
    }

    [Fact]
    public void The_mistakes_leave_devices_lines_links_but_for_a_length_and_all_settings_but_six_as_they_were()
    {
        var right = Resolve(ByHand).Document;
        var wrong = Resolve(Mistakes).Document;

        Assert.Equal(right.Rig.Devices, wrong.Rig.Devices);
        Assert.Equal(right.Rig.Links.Select(link => link.Id.Value == "bar-run" ? link with { LengthMetres = 120 } : link), wrong.Rig.Links);
        Assert.Equal(right.Lines, wrong.Lines);
        Assert.Equal(
            [
                "box-r/in/1 phantom False, gain desk-h > desk-m",
                "box-c/in/21 phantom True, gain desk-h > desk-m",
                "box-c/in/22 phantom True, gain desk-h > desk-m",
                "box-m/in/1 phantom False, gain  > ",
                "box-m/in/2 phantom False, gain  > ",
                "box-m/in/3 phantom False, gain  > ",
            ],
            Settings(wrong).Except(Settings(right))
        );
        Assert.Equal(Settings(right).Count(), Settings(wrong).Count());
    }

    private static IEnumerable<string> Settings(Show show) =>
        from inputs in show.Patch.Inputs
        from position in Enumerable.Range(0, inputs.At.Width)
        select $"{inputs.At[position]} phantom {inputs.Phantom}, gain {inputs.GainOwner} > {string.Join(", ", inputs.GainFollowers)}";

    private static string Carries(SignalGraph graph, PointIndex point) =>
        graph.Origin(point) is { IsNone: false } origin ? graph.Address(origin).ToString() : "silence";

    private static ResolvedShow Resolve(string name) => ShowResolver.Resolve(ShowReader.ReadFile(Path.Combine(Folder, name)).Value!, Library);
}
