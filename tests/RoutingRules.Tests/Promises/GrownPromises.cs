using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Tests.Assignment;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Promises;

/// <summary>
/// What leaves <c>assign</c>, on shows with processors, split looms, several networks, multicores, players and patches of which parts are missing.
/// </summary>
[Trait("Speed", "slow")]
public sealed class GrownPromises
{
    private const int Cases = 300;

    public static TheoryData<int> Starts => [.. Enumerable.Range(0, 3).Select(part => part * Cases / 3)];

    [Theory]
    [MemberData(nameof(Starts))]
    public void The_verifier_accepts_every_result_and_counts_the_same(int start) =>
        Try(start, (tiny, result) => string.Join(" ", AssignmentVerifier.Verify(tiny.Show, result, tiny.Options, _ => null).Problems));

    [Theory]
    [MemberData(nameof(Starts))]
    public void What_was_assigned_assigned_again_is_itself_to_the_byte(int start) => Try(start, (tiny, result) => SecondRun.Differs(tiny, result) ?? "");

    [Theory]
    [MemberData(nameof(Starts))]
    public void What_hangs_on_a_place_goes_on_hanging_there(int start) =>
        Try(
            start,
            (tiny, result) =>
            {
                var (before, after) = (new NaiveTracer(tiny.Show), new NaiveTracer(result.Show));
                var places = Places(result, tiny.Show).ToHashSet();
                return string.Join(
                    " ",
                    before
                        .Points(PortKind.Output, PortKind.Sink)
                        .Where(point => !places.Contains(point))
                        .Select(point => (Point: point, Place: before.Trace(point).Passed.FirstOrDefault(places.Contains)))
                        .Where(pair => pair.Place.Number > 0 && !after.Trace(pair.Point).Passed.Contains(pair.Place))
                        .Select(pair => $"{pair.Point} hung on {pair.Place} and no longer does.")
                );
            }
        );

    [Theory]
    [MemberData(nameof(Starts))]
    public void A_feed_taken_out_and_put_back_sounds_wherever_it_did(int start) =>
        Try(
            start,
            (tiny, result) =>
            {
                if (tiny.Show.Feeds.IsEmpty)
                    return "";

                var feed = tiny.Show.Feeds[tiny.Seed % tiny.Show.Feeds.Count];
                var without = Promise.Engine.Assign(result.Show with { Feeds = [.. result.Show.Feeds.Where(other => other.Id != feed.Id)] }, tiny.Options);
                var back = Promise.Engine.Assign(without.Show with { Feeds = result.Show.Feeds }, tiny.Options);
                var (first, last) = (new NaiveTracer(result.Show), new NaiveTracer(back.Show));
                return string.Join(
                    " ",
                    back.Placements.Where(placement =>
                            placement.Demand.StartsWith($"{feed.Id}/", StringComparison.Ordinal)
                            && result.Placements.Any(old => old.Demand == placement.Demand && old.At == placement.At)
                        )
                        .SelectMany(placement =>
                            first
                                .Points(PortKind.Output, PortKind.Input)
                                .Where(point => first.Trace(point).Passed.Contains(placement.At[0]) && !last.Trace(point).Passed.Contains(placement.At[0]))
                                .Select(point => $"{placement.Demand} is back at {placement.At}, and {point} behind it stays silent.")
                        )
                );
            }
        );

    /// <summary>A kept stream beside a block that is routed whole (the first two), and one that keeps a network which is not the first.</summary>
    [Theory]
    [InlineData(30995)]
    [InlineData(32055)]
    [InlineData(32738)]
    [InlineData(43287)]
    [InlineData(43296)]
    [InlineData(74489)]
    public void What_stays_beside_new_demands_breaks_no_rule(int seed) => AssertSound(GrownInstances.Make(seed));

    /// <summary>
    /// A line without a place names a channel that another line would reach by a factory route (the first two), and one source that stays on two legs.
    /// </summary>
    [Theory]
    [InlineData(100956)]
    [InlineData(115309)]
    [InlineData(101494)]
    [InlineData(114805)]
    [InlineData(110529)]
    [InlineData(119721)]
    [InlineData(26492838)]
    [InlineData(42001347)]
    public void Nothing_seems_served_that_was_not_and_each_leg_stays(int seed) => AssertSound(TinyInstances.Make(seed));

    /// <summary>
    /// A feed of an insert that nothing goes into: what its block brings to other outputs is silent, and next time one of them would seem to be its place.
    /// </summary>
    [Theory]
    [InlineData(5002089)]
    [InlineData(5008109)]
    public void A_feed_that_is_silent_yet_is_found_where_it_was_placed(int seed)
    {
        var made = MadeInstances.Make(seed);
        var result = AssignCases.Assign(made.Show, made.Options);

        Assert.NotEmpty(result.Placements);
        Assert.Null(SecondRun.Differs(made, result));
    }

    /// <summary>Pins that contradict keep their points: what took one of them would not be found there next time.</summary>
    [Theory]
    [InlineData(170040)]
    public void The_point_of_a_pin_that_is_left_out_stays_free(int seed)
    {
        var tiny = TinyInstances.Make(seed);
        AssertSound(tiny);
        Assert.Equal(["feed-2/1", "feed-2/2"], AssignCases.Assign(tiny.Show, tiny.Options).Contradictions.SelectMany(set => set));
    }

    /// <summary>The same on shows with inserts, blocks and more demands; in some the pin has no way to its point at all.</summary>
    [Theory]
    [InlineData(500786)]
    [InlineData(700343)]
    [InlineData(700385)]
    [InlineData(5006796)]
    [InlineData(5008042)]
    [InlineData(26493273)]
    [InlineData(26496090)]
    public void Whoever_stands_beside_contradicting_pins_is_found_there_again(int seed)
    {
        var made = MadeInstances.Make(seed);
        Assert.Null(SecondRun.Differs(made, AssignCases.Assign(made.Show, made.Options)));
    }

    /// <summary>A slot that feeds outputs of two groups: which of them are placed tells whether the others have to be silent.</summary>
    [Theory]
    [InlineData(40000190)]
    public void What_a_slot_feeds_at_once_is_told_apart(int seed)
    {
        var made = MadeInstances.Make(seed);
        Assert.Null(AssignCases.Verdict(made.Show, AssignCases.Assign(made.Show, made.Options), made.Options));
    }

    /// <summary>A stream that stays carries a source in a dead slot and in a good one.</summary>
    [Theory]
    [InlineData(40001319)]
    public void A_good_slot_is_found_beside_a_dead_one(int seed)
    {
        var grown = GrownInstances.Make(seed);
        var result = AssignCases.Assign(grown.Show, grown.Options);

        Assert.Equal(0, result.Objective!.Values[(int)Priority.High]);
        Assert.Null(SecondRun.Differs(grown, result));
    }

    /// <summary>A leg of a split is changed only for a reason (the first), and what lies behind another's place is nobody's own.</summary>
    [Theory]
    [InlineData(2002654)]
    [InlineData(26496322)]
    public void What_stays_stays_on_the_second_run(int seed) => AssertSound(GrownInstances.Make(seed));

    private static void AssertSound(TinyInstance tiny)
    {
        var result = Promise.Engine.Assign(tiny.Show, tiny.Options);
        Assert.Empty(AssignmentVerifier.Verify(tiny.Show, result, tiny.Options, _ => null).Problems);
        Assert.Equal(AssignCases.Json(result.Show), AssignCases.Json(Promise.Engine.Assign(result.Show, tiny.Options).Show));
    }

    private static void Try(int start, Func<TinyInstance, AssignmentResult, string> wrong)
    {
        var broken = new List<string>();
        for (var seed = start; seed < start + (Cases / 3); seed++)
        {
            var tiny = GrownInstances.Make(seed);
            if (wrong(tiny, Promise.Engine.Assign(tiny.Show, tiny.Options)) is { Length: > 0 } problem)
                broken.Add($"{tiny}: {problem}");
        }

        Assert.Empty(broken);
    }

    private static IEnumerable<Point> Places(AssignmentResult result, Show show) =>
        result
            .Placements.Where(placement => show.Lines.All(line => line.Id.Value != placement.Demand))
            .SelectMany(placement => Enumerable.Range(0, placement.At.Width).Select(i => placement.At[i]));
}
