using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Tests.Assignment;

/// <summary>Links that fill up, against trying everything.</summary>
[Trait("Speed", "slow")]
public class NarrowLinkTests
{
    private const int SeedsPerChunk = 50;

    // Trying everything takes as long for this one as for all the others together; it agreed when it was last tried.
    private const int Endless = 304;

    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    public static TheoryData<int> Chunks => [.. Enumerable.Range(0, 8)];

    [Theory]
    [MemberData(nameof(Chunks))]
    public void Tiny_shows_with_narrow_links_come_out_as_well_as_anything_can(int chunk)
    {
        var wrong = Enumerable
            .Range(chunk * SeedsPerChunk, SeedsPerChunk)
            .Where(seed => seed != Endless)
            .Select(NarrowInstances.Make)
            .SelectMany(tiny => TinyAgreement.Wrong(Engine, tiny))
            .ToList();

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    [Fact]
    public void The_narrow_links_make_a_difference_often_enough()
    {
        var differing = 0;
        for (var seed = 0; seed < 100; seed++)
        {
            var tiny = NarrowInstances.Make(seed);
            var wide = tiny.Show with { Rig = tiny.Show.Rig with { Links = tiny.Show.Rig.Links.Select(link => link with { SpeedMbps = null }).ToValueList() } };
            differing += Engine.Assign(tiny.Show, tiny.Options).Objective != Engine.Assign(wide, tiny.Options).Objective ? 1 : 0;
        }

        Assert.InRange(differing, 20, 100);
    }

    [Fact]
    public void Without_a_link_of_a_ring_streams_go_the_other_way()
    {
        var solved = HandSolvedCases.Load(HandSolvedCases.Names[23]);
        var fast = solved.Show with
        {
            Rig = solved.Show.Rig with { Links = solved.Show.Rig.Links.Select(link => link with { SpeedMbps = 100 }).ToValueList() },
        };

        var whole = Engine.Assign(fast, new AssignmentOptions());
        var cut = Engine.Assign(fast, solved.Options);

        Assert.Equal((0, 0), (whole.Unplaced.Count, cut.Unplaced.Count));
        Assert.Equal([Use("l1", "desk", "box-a", 1), Use("l2", "desk", "box-b", 1)], whole.Links);
        Assert.Equal([Use("l2", "desk", "box-b", 2), Use("l3", "box-b", "box-a", 1)], cut.Links);
    }

    // Class A, 2 channels, 48 kHz: 7 296 000 bit/s each (instance 22).
    private static LinkUse Use(string link, string from, string to, int streams) =>
        new()
        {
            Link = new(link),
            From = new(from),
            To = new(to),
            Streams = streams,
            BitsPerSecond = streams * 7_296_000,
            MostBitsPerSecond = 75_000_000,
        };

    [Theory]
    [InlineData(0)]
    [InlineData(100.5)]
    [InlineData(double.NaN)]
    public void A_share_beyond_the_whole_link_is_refused(double percent)
    {
        var solved = HandSolvedCases.Load(HandSolvedCases.Names[21]);

        Assert.Throws<ArgumentOutOfRangeException>(() => Engine.Assign(solved.Show, new AssignmentOptions { LinkPercent = percent }));
    }

    // Instance 22 needs two streams of 7.296 Mbit/s on 10 Mbit/s to place everything, 16 Mbit/s give 12 at three quarters and 16 in all.
    [Theory]
    [InlineData(16, 75, 1)]
    [InlineData(16, 100, 0)]
    [InlineData(20, 75, 0)]
    [InlineData(20, 72.9, 1)]
    public void More_of_a_link_holds_more_streams(int speed, double percent, int unplaced)
    {
        var solved = HandSolvedCases.Load(HandSolvedCases.Names[21]);
        var show = solved.Show with
        {
            Rig = solved.Show.Rig with { Links = solved.Show.Rig.Links.Select(link => link with { SpeedMbps = speed }).ToValueList() },
        };

        Assert.Equal(unplaced, Engine.Assign(show, new AssignmentOptions { LinkPercent = percent }).Unplaced.Count);
    }
}
