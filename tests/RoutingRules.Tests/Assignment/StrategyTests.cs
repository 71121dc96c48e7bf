using RoutingRules.Assignment;
using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Plugins;
using RoutingRules.Testing;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

public class StrategyTests
{
    private static readonly HandSolvedCase Spares = HandSolvedCases.Load("11-spares-leave-a-demand-out");

    [Fact]
    public void A_pinned_feed_whose_bus_does_not_exist_is_left_out_by_name_and_contradicts_nothing()
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
        {
            Feeds = [SmallShow.Feed("a", FeedRole.Monitor, "desk/aux/99", "box/out/1"), SmallShow.Feed("b", FeedRole.Monitor, "desk/aux/2", "box/out/2")],
        };

        var result = RoutingEngine.CreateBuilder().Build().Assign(show, new AssignmentOptions());

        Assert.Equal((AssignmentStatus.Optimal, 0), (result.Status, result.Contradictions.Count));
        Assert.Equal("Its source desk/aux/99 does not exist; correct the source.", Assert.Single(result.Unplaced).Reason);
        Assert.Equal([], AssignmentVerifier.Verify(show, result, new AssignmentOptions(), _ => null).Problems);
        Assert.Equal(result.Objective, BruteForce.Solve(show, new AssignmentOptions()).Vector);
    }

    [Fact]
    public void Every_engine_has_the_default_strategy_first_and_the_quick_one()
    {
        var engine = RoutingEngine.CreateBuilder().AddPlugin(new Bringer(new Scripted(_ => null))).Build();

        Assert.Equal(["exact", "greedy", "scripted"], engine.Strategies.Select(strategy => strategy.Name));
    }

    [Fact]
    public void Two_strategies_of_one_name_are_refused()
    {
        var builder = RoutingEngine.CreateBuilder().AddStrategy(new Scripted(_ => null)).AddStrategy(new Scripted(_ => null));

        var fault = Assert.Throws<InvalidOperationException>(builder.Build);

        Assert.Contains("scripted", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_strategy_is_refused_with_the_names_there_are()
    {
        var fault = Assert.Throws<ArgumentException>(() =>
            RoutingEngine.CreateBuilder().Build().Assign(Spares.Show, new AssignmentOptions { Strategy = "magic" })
        );

        Assert.Contains("'magic'", fault.Message, StringComparison.Ordinal);
        Assert.Contains("exact, greedy", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_configuration_names_the_strategy() =>
        Assert.Equal(
            "greedy",
            new AssignmentConfig { Strategy = "greedy" }
                .ToOptions()
                .Strategy
        );

    [Theory]
    [InlineData("one choice too many", "choices for")]
    [InlineData("no candidate", "candidates")]
    [InlineData("proves too much", "numbers")]
    [InlineData("all at the first candidate", "cannot stand together")]
    public void A_strategy_that_proposes_nonsense_is_rejected(string nonsense, string complaint)
    {
        var strategy = new Scripted(part =>
            nonsense switch
            {
                "one choice too many" => new StrategyAnswer { Choices = [.. LeaveOutAll(part), 0] },
                "no candidate" => new StrategyAnswer { Choices = [.. part.Demands.Select(demand => demand.Candidates.Count)] },
                "proves too much" => new StrategyAnswer { Choices = [.. part.Construct(default)!], ProvenNumbers = 15 },
                _ => new StrategyAnswer { Choices = [.. part.Demands.Select(_ => 0)] },
            }
        );

        var fault = Assert.Throws<InvalidProposalException>(() => AssignWith(strategy, Spares));

        Assert.Equal("scripted", fault.Strategy);
        Assert.Contains(complaint, fault.Fault, StringComparison.Ordinal);
    }

    [Fact]
    public void Leaving_out_a_held_demand_is_rejected()
    {
        var strategy = new Scripted(part => new StrategyAnswer { Choices = [.. LeaveOutAll(part)] });

        var fault = Assert.Throws<InvalidProposalException>(() => AssignWith(strategy, HandSolvedCases.Load("18-held-demands-stay")));

        Assert.Contains("pinned or held", fault.Fault, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_strategy_proves_is_what_the_result_says()
    {
        var strategy = new Scripted(part => new StrategyAnswer { Choices = [.. part.Construct(default)!], ProvenNumbers = 9 });

        var result = AssignWith(strategy, HandSolvedCases.Load("16-order-around-a-pin"));

        Assert.InRange(result.ProvenNumbers, 9, 13);
        Assert.Equal(AssignmentStatus.Feasible, result.Status);
    }

    [Fact]
    public void A_strategy_that_finds_nothing_leaves_the_search_to_the_default_one_without_proof()
    {
        var result = AssignWith(new Scripted(_ => null), Spares);

        Assert.Equal(Spares.Vector, result.Objective);
        Assert.Equal(AssignmentStatus.Feasible, result.Status);
    }

    [Fact]
    public void A_strategy_sees_the_score_that_the_result_will_have()
    {
        ObjectiveVector? seen = null;
        var strategy = new Scripted(part =>
        {
            var choices = part.Construct(default)!;
            seen = part.Score(choices);
            return new StrategyAnswer { Choices = [.. choices] };
        });

        var result = AssignWith(strategy, HandSolvedCases.Load("03-shared-block-in-same-places"));

        Assert.Equal(seen, result.Objective);
    }

    [Fact]
    public void What_a_strategy_does_not_support_is_told_to_the_caller()
    {
        var strategy = new Scripted(_ => throw new UnsupportedAssignmentException("scripted", "spares"));

        var fault = Assert.Throws<UnsupportedAssignmentException>(() => AssignWith(strategy, Spares));

        Assert.Equal(("scripted", "spares"), (fault.Strategy, fault.Feature));
    }

    [Fact]
    public void The_quick_strategy_is_valid_and_never_better_than_the_default_one()
    {
        var engine = RoutingEngine.CreateBuilder().Build();
        var worse = 0;
        for (var seed = 0; seed < 400; seed++)
        {
            var tiny = TinyInstances.Make(seed);
            var options = tiny.Options with { Strategy = "greedy" };
            var quick = engine.Assign(tiny.Show, options);
            var best = engine.Assign(tiny.Show, tiny.Options);
            var left = quick.Contradictions.SelectMany(set => set).Order(StringComparer.Ordinal).ToValueList();

            var verified = AssignmentVerifier.Verify(tiny.Show, quick.Show, quick.Placements, quick.Unplaced, options, _ => null, left);

            Assert.Equal([], verified.Problems.Select(problem => $"{tiny}: {problem}"));
            Assert.Equal((tiny.ToString(), quick.Objective), (tiny.ToString(), verified.Vector));
            if (quick.Objective is not null && best.Objective is not null)
            {
                var compared = StrategyComparison.Compare(engine.Resolve(tiny.Show), best, quick, tiny.Options.Order);
                Assert.True(compared <= 0, $"{tiny}: {quick.Objective} is better than {best.Objective}");
                worse += compared < 0 ? 1 : 0;
            }
        }

        Assert.InRange(worse, 1, 399);
    }

    private static IEnumerable<int> LeaveOutAll(AssignmentPart part) => part.Demands.Select(_ => StrategyAnswer.LeftOut);

    private static AssignmentResult AssignWith(AssignmentStrategy strategy, HandSolvedCase solved) =>
        RoutingEngine.CreateBuilder().AddStrategy(strategy).Build().Assign(solved.Show, solved.Options with { Strategy = strategy.Name });

    [Fact]
    public void A_result_is_never_worse_than_what_stands()
    {
        var strategy = new Scripted(part => new StrategyAnswer { Choices = [.. LeaveOutAll(part)] });

        var engine = RoutingEngine.CreateBuilder().AddStrategy(strategy).Build();
        var result = engine.Assign(Served(), new AssignmentOptions { Strategy = strategy.Name });

        Assert.Equal("box/out/2", Assert.Single(result.Placements).At.ToString());
    }

    [Fact]
    public void An_assignment_that_is_stopped_at_once_leaves_what_stands()
    {
        var result = RoutingEngine.CreateBuilder().Build().Assign(Served(), new AssignmentOptions(), new CancellationToken(canceled: true));

        Assert.Equal(AssignmentStatus.Stopped, result.Status);
        Assert.Equal("box/out/2", Assert.Single(result.Placements).At.ToString());
    }

    // One wedge, served at the second output.
    private static Show Served() =>
        (
            SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
            {
                Feeds = [SmallShow.FeedTo("wedge", FeedRole.Monitor, "desk/aux/5", "box")],
            }
        )
            .With(SmallShow.Stream("s1", "desk/transmit/1-4", "box/receive/1-4"))
            .With(SmallShow.Route("desk/aux/5", "desk/transmit/2"), SmallShow.Route(null, "desk/transmit/1"), SmallShow.Route(null, "desk/transmit/3-4"));

    private sealed class Scripted(Func<AssignmentPart, StrategyAnswer?> script) : AssignmentStrategy
    {
        public override string Name => "scripted";

        public override string Title => "Does what the test says";

        public override StrategyAnswer? Search(AssignmentPart part, CancellationToken cancellation) => script(part);
    }

    private sealed class Bringer(AssignmentStrategy strategy) : RoutingPlugin
    {
        public override PluginInfo Info =>
            new()
            {
                Id = "bringer",
                Version = "1.0.0",
                Title = "Brings a strategy",
            };

        public override void Register(PluginRegistry registry) => registry.AddStrategy(strategy);
    }
}
