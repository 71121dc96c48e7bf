using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Hearing;
using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Checking.Rules.Resilience;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Profiles.Generic;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Feeds;
using RoutingRules.Tests.Checking.Rules.Networks;
using RoutingRules.Tests.Checking.Rules.Resilience;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>A rule passes only where it had something to judge.</summary>
public sealed class LookedAtTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    /// <summary>What the examples hold nothing of, with a show that does.</summary>
    private static readonly (Rule Rule, Show Show)[] Others =
    [
        (
            new ExtensionUnresolved([new() { Name = "loom-plan", HighestVersion = 2 }]),
            Two() with
            {
                Extensions = new ExtensionData { Json = """{ "loom-plan": { "version": 2 } }""" },
            }
        ),
        (
            new BlockRouteBroken(),
            Of(("box", SmallProfiles.FreeBox with { Routing = [SmallProfiles.Entry("in", "out", RoutingMode.Block) with { BlockSize = 4 }] }))
        ),
        (new ClockLedTwice(), Two().With(Clock("one", "desk"), Clock("two", "box"))),
        (
            new ConnectorShared(),
            ConnectorSharedTests.Show(SignalLevel.Aes3, ConnectorSharedTests.Aux(1, FeedRole.Monitor), ConnectorSharedTests.Aux(2, FeedRole.Monitor))
        ),
        (new FillSlower(), FillSlowerTests.Show(2, FeedRole.Fill, "m", "f")),
        (new IsolationMissing(), Two() with { Feeds = [Feed("rec", FeedRole.Record, "desk/main/1", "desk/out/1")] }),
        (new NetworksShare(), NetworksShareTests.Two("sw-2", "a", "b")),
        (new EvacuationUnassured(), Two() with { Feeds = [Feed("evac", FeedRole.Evacuation, "desk/main/1", "desk/out/1")] }),
    ];

    [Fact]
    public void Nothing_passes_on_an_empty_show() =>
        Assert.All(
            Engine.Check(new Show { Title = "Empty", Rig = new() }).Rules,
            rule =>
            {
                Assert.Equal(RuleStatus.NotApplicable, rule.Status);
                Assert.Equal(0, rule.Subjects);
            }
        );

    [Fact]
    public void Devices_without_a_patch_are_judged_by_few_rules() =>
        Assert.Equal(
            ["id-duplicate", "profile-unknown", "profile-unsound", "word-doubtful", "signal-loop", "packet-time-unusual"],
            Engine
                .Check(Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)))
                .Rules.Where(rule => rule.Status == RuleStatus.Passed)
                .Select(rule => rule.Descriptor.Name)
        );

    [Fact]
    public void Every_rule_has_something_to_look_at_in_an_example_or_here()
    {
        var examples = Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "examples"), "*.show.json");
        var shows = examples.Order(StringComparer.Ordinal).Select(file => ShowReader.ReadFile(file).Value!).ToList();
        var outcomes = shows.SelectMany(show => Engine.Check(show).Rules).Concat(Others.SelectMany(other => RuleTester.Run(other.Rule, other.Show).Rules));
        var looked = outcomes.Where(rule => rule.Subjects > 0).Select(rule => rule.Descriptor.Name).ToHashSet(StringComparer.Ordinal);

        Assert.True(examples.Length >= 5);
        Assert.Equal([], Engine.Rules.Select(rule => rule.Descriptor.Name).Where(name => !looked.Contains(name)));
    }

    [Theory]
    [InlineData(RuleStatus.NotApplicable, 0)]
    [InlineData(RuleStatus.NotApplicable, 0, 0)]
    [InlineData(RuleStatus.Passed, 1, 1)]
    [InlineData(RuleStatus.Passed, 5, 2, 0, 3)]
    public void A_rule_over_the_show_looked_at_what_it_says(RuleStatus status, int subjects, params int[] things)
    {
        var outcome = Outcome(new ShowRule(context => Array.ForEach(things, context.LookedAt)));

        Assert.Equal((status, subjects), (outcome.Status, outcome.Subjects));
    }

    [Theory]
    [InlineData(RuleStatus.Passed, 2)]
    [InlineData(RuleStatus.Passed, 1, 0)]
    [InlineData(RuleStatus.Passed, 4, 1, 2)]
    public void Any_other_subject_counts_once_unless_the_rule_says_otherwise(RuleStatus status, int subjects, params int[] thingsAtBox)
    {
        var outcome = Outcome(new DeviceRule((context, device) => Array.ForEach(device.Id.Value == "box" ? thingsAtBox : [], context.LookedAt)));

        Assert.Equal((status, subjects), (outcome.Status, outcome.Subjects));
    }

    [Fact]
    public void A_rule_that_waves_every_subject_through_had_nothing_to_look_at() =>
        Assert.Equal(RuleStatus.NotApplicable, Outcome(new DeviceRule((context, _) => context.LookedAt(0))).Status);

    [Fact]
    public void Less_than_nothing_is_a_fault_of_the_rule()
    {
        var result = RuleTester.Run(new ShowRule(context => context.LookedAt(-1)), Two());

        Assert.True(Assert.Single(result.Undecided).IsFault);
        Assert.Equal(RuleStatus.Undecided, Assert.Single(result.Rules).Status);
    }

    [Fact]
    public void What_a_rule_throws_leaves_one_subject_undecided_and_the_others_judged()
    {
        var result = RuleTester.Run(
            new DeviceRule(
                (context, device) =>
                {
                    if (device.Id.Value == "desk")
                    {
                        throw new InvalidOperationException("planted");
                    }

                    context.Report("Seen.", "/rig/devices/1", Entity.Of("device", device.Id));
                }
            ),
            Two()
        );

        Assert.Equal(("device desk", true), (Assert.Single(result.Undecided).Subject, result.Undecided[0].IsFault));
        Assert.Equal("box", Assert.Single(Assert.Single(result.Findings).Entities).Id);
    }

    private static Show Two() => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));

    private static RuleOutcome Outcome(Rule rule) => Assert.Single(RuleTester.Run(rule, Two()).Rules);

    private static RuleDescriptor Describe() =>
        new()
        {
            Id = "ZZ1",
            Name = "planted",
            Title = "Planted",
            Family = RuleFamily.Points,
            Severity = Severity.Error,
            Checks = "Nothing.",
            Why = "For tests.",
            Remedy = "",
            Source = "common practice, no source",
        };

    private sealed class ShowRule(Action<RuleContext> check) : Rule<ResolvedShow>
    {
        public override RuleDescriptor Descriptor { get; } = Describe();

        public override void Check(RuleContext context, ResolvedShow subject) => check(context);
    }

    private sealed class DeviceRule(Action<RuleContext, DeviceNode> check) : Rule<DeviceNode>
    {
        public override RuleDescriptor Descriptor { get; } = Describe();

        public override void Check(RuleContext context, DeviceNode subject) => check(context, subject);
    }
}
