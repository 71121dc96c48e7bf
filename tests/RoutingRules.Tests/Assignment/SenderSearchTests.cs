using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Strategies.CpSat;

namespace RoutingRules.Tests.Assignment;

/// <summary>Boxes that only one of two consoles can serve at a time.</summary>
[Trait("Speed", "slow")]
public class SenderSearchTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddPlugin(new CpSatPlugin()).Build();

    public static TheoryData<int> Chunks => [.. Enumerable.Range(0, 4)];

    [Theory]
    [MemberData(nameof(Chunks))]
    public void Small_contested_shows_come_out_as_trying_everything_says(int chunk)
    {
        var wrong = Enumerable
            .Range(chunk * 12, 12)
            .Select(seed => ContestedShows.Make(seed, boxes: 2, size: 2, feeds: 5, second: 40))
            .SelectMany(tiny => TinyAgreement.Wrong(Engine, tiny))
            .ToList();

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    [Theory]
    [MemberData(nameof(Chunks))]
    public void What_is_said_to_be_proven_is_so_whatever_the_budget(int chunk)
    {
        var wrong = new List<string>();
        foreach (var tiny in Enumerable.Range(chunk * 12, 12).Select(seed => ContestedShows.Make(seed, boxes: 3, size: 2, feeds: 5, second: 40)))
        {
            var best = BruteForce.Solve(tiny.Show, tiny.Options);
            foreach (var budget in new[] { 0, 20, 200, 2_000 })
            {
                var found = Engine.Assign(tiny.Show, tiny.Options with { Budget = budget });
                if (!found.Objective!.Values.Take(found.ProvenNumbers).SequenceEqual(best.Vector!.Values.Take(found.ProvenNumbers)))
                    wrong.Add($"{tiny}, budget {budget}: best {best.Vector}, found {found.Objective}, {found.ProvenNumbers} proven");
            }
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    // A feed that wants one box only loses its place exactly when the box takes the other console; each box by itself takes what loses least.
    [Fact]
    public void Where_every_feed_wants_one_box_the_loss_is_what_counting_gives()
    {
        for (var seed = 0; seed < 15; seed++)
        {
            var tiny = ContestedShows.Make(seed, boxes: 6, size: 4, feeds: 20, second: 0);
            var expected = new int[4];
            foreach (var box in tiny.Show.Feeds.GroupBy(feed => feed.To[0].Devices[0]))
            {
                int[][] losses = [Loss(box, "desk-a"), Loss(box, "desk-b")];
                var least = losses[0].AsSpan().SequenceCompareTo(losses[1]) <= 0 ? losses[0] : losses[1];
                expected = [.. expected.Zip(least, (sum, more) => sum + more)];
            }

            var result = Engine.Assign(tiny.Show, tiny.Options);

            Assert.Equal((tiny.ToString(), expected.ToValueList()), (tiny.ToString(), result.Objective!.Values.Take(4).ToValueList()));
            Assert.InRange(result.ProvenNumbers, 4, ObjectiveVector.Length);
        }

        // Of a box's four outputs those of the console are taken by priority; all else stays without a place.
        static int[] Loss(IEnumerable<Feed> feeds, string console)
        {
            var placed = feeds.Where(feed => feed.Source.Device == new Id<Device>(console)).OrderBy(feed => feed.Priority).Take(4).ToHashSet();
            return
            [
                .. new[] { Priority.Critical, Priority.High, Priority.Normal, Priority.Low }.Select(priority =>
                    feeds.Count(feed => feed.Priority == priority && !placed.Contains(feed))
                ),
            ];
        }
    }

    [Fact]
    public void Larger_contested_shows_lose_no_more_than_the_constraint_solver_finds_and_what_both_prove_agrees()
    {
        var both = 0;
        for (var seed = 0; seed < 4; seed++)
        {
            var tiny = ContestedShows.Make(seed, boxes: 6, size: 4, feeds: 22, second: 60);

            var mine = Engine.Assign(tiny.Show, tiny.Options);
            var theirs = Engine.Assign(tiny.Show, tiny.Options with { Strategy = "cp-sat" });

            var (lost, lostThere) = (mine.Objective!.Values.Take(4).ToArray(), theirs.Objective!.Values.Take(4).ToArray());
            Assert.True(lost.AsSpan().SequenceCompareTo(lostThere) <= 0, $"{tiny}: {mine.Objective} against {theirs.Objective}");
            if (mine.ProvenNumbers >= 4 && theirs.ProvenNumbers >= 4)
            {
                both++;
                Assert.Equal((tiny.ToString(), lostThere.ToValueList()), (tiny.ToString(), lost.ToValueList()));
            }
        }

        Assert.InRange(both, 2, 4);
    }
}
