using RoutingRules.Assignment;
using RoutingRules.Tests.Assignment;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Verification;

public sealed class ProofVerifierTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    [Fact]
    public void What_counting_confirms_is_what_trying_everything_finds()
    {
        var confirmedInAll = 0;
        for (var seed = 0; seed < 400; seed++)
        {
            var tiny = TinyInstances.Make(seed);
            if (BruteForce.Solve(tiny.Show, tiny.Options).Vector is not { } best)
                continue;

            // A hasty result is often not the best: counting must not confirm what is wrong.
            foreach (var strategy in (string[])["exact", "greedy"])
            {
                var found = Engine.Assign(tiny.Show, tiny.Options with { Strategy = strategy }).Objective!;
                var confirmed = ProofVerifier.ConfirmedNumbers(tiny.Show, found, tiny.Options, id => Engine.Profiles.Find(id)?.Value);
                for (var place = 0; place < confirmed; place++)
                {
                    var at = place < 6 || tiny.Options.Order.IsEmpty ? place : 6 + (int)tiny.Options.Order[place - 6];
                    Assert.True(best.Values[at] == found.Values[at], $"{tiny}, {strategy}: {confirmed} numbers of {found} are confirmed, the best is {best}");
                }

                confirmedInAll += strategy == "exact" ? confirmed : 0;
            }
        }

        Assert.True(confirmedInAll > 400 * 3, $"Only {confirmedInAll} numbers in all are confirmed.");
    }

    [Fact]
    public void Nothing_is_confirmed_that_trying_everything_goes_below()
    {
        foreach (
            var make in (Func<int, TinyInstance>[])
                [PointedInstances.FreePins, PointedInstances.KeptPairs, PointedInstances.Blocks, PointedInstances.Contradictions]
        )
        {
            foreach (var tiny in Enumerable.Range(500, 40).Select(make))
            {
                if (BruteForce.Solve(tiny.Show, tiny.Options).Vector is not { } best)
                    continue;

                foreach (var strategy in (string[])["exact", "greedy"])
                {
                    var found = Engine.Assign(tiny.Show, tiny.Options with { Strategy = strategy }).Objective!;
                    var confirmed = ProofVerifier.ConfirmedNumbers(tiny.Show, found, tiny.Options, _ => null);
                    Assert.True(
                        best.Values.Take(confirmed).ToArray().AsSpan().SequenceCompareTo(found.Values.Take(confirmed).ToArray()) >= 0,
                        $"{tiny}: {confirmed} of {found} are confirmed, {best} exists"
                    );
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(AssignerTests.Cases), MemberType = typeof(AssignerTests))]
    public void No_more_is_confirmed_of_worse_numbers_than_those_on_paper(string name)
    {
        var solved = HandSolvedCases.Load(name);
        if (solved.Vector is not { } vector)
            return;

        for (var place = 0; place < ObjectiveVector.Length; place++)
        {
            var worse = vector with { Values = [.. vector.Values.Index().Select(entry => entry.Item + (entry.Index == place ? 1 : 0))] };
            Assert.True(Confirmed(worse) <= place || !solved.Options.Order.IsEmpty);
        }

        int Confirmed(ObjectiveVector numbers) => ProofVerifier.ConfirmedNumbers(solved.Show, numbers, solved.Options, id => Engine.Profiles.Find(id)?.Value);
    }
}
