using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Checking;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Promise 6: a rule that fails, overspends or cannot decide is reported so, and the others' results stay what they were.</summary>
[Trait("Speed", "slow")]
public sealed class RulePromises
{
    private const long Budget = 5_000;
    private static readonly ActiveRule[] BuiltIn = [.. BuiltInRules.All.Select(Usual)];

    private static readonly ActiveRule[] Planted = [Usual(new ThrowingRule()), Usual(new EndlessRule()), Usual(new UnsureRule()), Usual(new StrangeRule())];

    [Property(MaxTest = Promise.Cases)]
    public Property Each_rule_ends_in_one_way_that_its_findings_bear_out() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var result = Promise.Engine.Check(show);
                if (!result.Rules.Select(outcome => outcome.Descriptor.Id).SequenceEqual(BuiltInRules.All.Select(rule => rule.Descriptor.Id)))
                {
                    return "Not every rule has an outcome, once and in order.";
                }

                foreach (var outcome in result.Rules)
                {
                    var found = result.Findings.Any(finding => finding.Rule == outcome.Descriptor.Id);
                    var undecided = result.Undecided.Any(subject => subject.Rule == outcome.Descriptor.Id);
                    var expected =
                        found ? RuleStatus.Found
                        : undecided ? RuleStatus.Undecided
                        : outcome.Subjects == 0 ? RuleStatus.NotApplicable
                        : RuleStatus.Passed;
                    if (outcome.Status != expected)
                    {
                        return $"{outcome.Descriptor.Id} ended as {outcome.Status}, which should be {expected}.";
                    }

                    if (found && outcome.Subjects == 0)
                    {
                        return $"{outcome.Descriptor.Id} found something and says that it looked at nothing.";
                    }
                }

                return null;
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property No_built_in_rule_fails_or_overspends() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
                Promise.Engine.Check(show).Undecided.FirstOrDefault(subject => subject.IsFault || subject.Reason.Contains("budget", StringComparison.Ordinal))
                    is { } bad
                    ? $"{bad.Rule} on {bad.Subject}: {bad.Reason}"
                    : null
        );

    [Property(MaxTest = Promise.Cases)]
    public Property Bad_rules_are_undecided_and_leave_the_others_alone() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var resolved = Promise.Resolve(show);
                var alone = RuleRunner.Run(resolved, BuiltIn, Budget, CancellationToken.None);
                var together = RuleRunner.Run(resolved, [.. Planted, .. BuiltIn], Budget, CancellationToken.None);
                if (together.Findings != alone.Findings || !together.Rules.Skip(Planted.Length).SequenceEqual(alone.Rules))
                {
                    return "Bad rules changed what the others say.";
                }

                var undecided = together.Undecided.Where(subject => Planted.Any(planted => planted.Rule.Descriptor.Id == subject.Rule)).ToArray();
                foreach (var (rule, _, _) in Planted)
                {
                    var own = undecided.Where(subject => subject.Rule == rule.Descriptor.Id).ToArray();
                    var expected = rule is StrangeRule ? 1 : show.Rig.Devices.Count;
                    if (own.Length != expected || own.Any(subject => subject.IsFault != rule is ThrowingRule or StrangeRule))
                    {
                        return $"{rule.Descriptor.Id} should be undecided on {expected} subjects and is on {own.Length}.";
                    }
                }

                return together.Rules.Take(Planted.Length).All(outcome => outcome.Status == RuleStatus.Undecided)
                    ? null
                    : "A bad rule did not end as undecided.";
            }
        );

    private static ActiveRule Usual(Rule rule) => new(rule, rule.Descriptor.Severity, []);

    [Fact]
    public void What_a_rule_found_before_it_failed_stays_and_counts_as_found()
    {
        var show = SmallShow.Of(("a", SmallProfiles.Box), ("b", SmallProfiles.Box));

        var result = RuleTester.Run(new HalfRule(), show);

        Assert.Equal("device a", Assert.Single(result.Undecided).Subject);
        Assert.Equal("Looked at b.", Assert.Single(result.Findings).Message);
        Assert.Equal(RuleStatus.Found, Assert.Single(result.Rules).Status);
    }

    private static RuleDescriptor Describe(string id) =>
        new()
        {
            Id = id,
            Name = $"planted-{id.ToLowerInvariant()}",
            Title = "Planted",
            Family = RuleFamily.Points,
            Severity = Severity.Error,
            Checks = "Nothing.",
            Why = "For tests.",
            Remedy = "",
            Source = "common practice, no source",
        };

    private sealed class ThrowingRule : Rule<DeviceNode>
    {
        public override RuleDescriptor Descriptor { get; } = Describe("ZZ1");

        public override void Check(RuleContext context, DeviceNode subject) => throw new InvalidOperationException("planted");
    }

    private sealed class EndlessRule : Rule<DeviceNode>
    {
        public override RuleDescriptor Descriptor { get; } = Describe("ZZ2");

        public override void Check(RuleContext context, DeviceNode subject)
        {
            while (context.Devices.Count > 0)
            {
                _ = context.Devices[0];
            }
        }
    }

    private sealed class UnsureRule : Rule<DeviceNode>
    {
        public override RuleDescriptor Descriptor { get; } = Describe("ZZ3");

        public override void Check(RuleContext context, DeviceNode subject) => context.CouldNotDecide("planted");
    }

    /// <summary>Asks for subjects that no show has.</summary>
    private sealed class StrangeRule : Rule<string>
    {
        public override RuleDescriptor Descriptor { get; } = Describe("ZZ4");

        public override void Check(RuleContext context, string subject) { }
    }

    private sealed class HalfRule : Rule<DeviceNode>
    {
        public override RuleDescriptor Descriptor { get; } = Describe("ZZ5");

        public override void Check(RuleContext context, DeviceNode subject)
        {
            if (subject.Id.Value == "a")
            {
                throw new InvalidOperationException("planted");
            }

            context.Report($"Looked at {subject.Id}.", "", Entity.Of("device", subject.Id));
        }
    }
}
