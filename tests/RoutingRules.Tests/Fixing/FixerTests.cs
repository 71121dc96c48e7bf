using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Fixing;

/// <summary>How the fixer takes, refuses and stops, with rules and providers made for it.</summary>
public sealed class FixerTests
{
    private static Show Labelled(string text) =>
        Of(("desk", SmallProfiles.Console)) with
        {
            Patch = new() { Labels = [new PointLabel { At = At("desk/aux/1"), Text = text }] },
        };

    [Fact]
    public void A_safe_fix_is_taken_and_told()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)).With(Route("desk/aux/5", "desk/transmit/5"));
        var result = RoutingEngine.CreateBuilder().Build().Fix(show);

        var applied = Assert.Single(result.Applied);
        Assert.Equal("RR2008", applied.Finding.Rule);
        Assert.Empty(applied.Moves);
        Assert.Empty(result.Show.Patch.Routes);
        Assert.Contains(result.Before.Findings, finding => finding.Rule == "RR2008");
        Assert.DoesNotContain(result.After.Findings, finding => finding.Rule == "RR2008");
    }

    [Fact]
    public void What_is_accepted_stays_unless_its_rule_is_asked_for()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)).With(Route("desk/aux/5", "desk/transmit/5"));
        var engine = RoutingEngine.CreateBuilder().Build();
        var accepted = new FixOptions { IsAccepted = finding => finding.Rule == "RR2008" };

        Assert.Empty(engine.Fix(show, accepted).Applied);
        Assert.Contains(engine.Fix(show, accepted).After.Findings, finding => finding.Rule == "RR2008");
        Assert.Single(engine.Fix(show, accepted with { IsAccepted = finding => finding.Rule == "RR2009" }).Applied);
        Assert.Single(engine.Fix(show, accepted with { Rules = ["RR2008"] }).Applied);
    }

    [Fact]
    public void Unsafe_fixes_wait_until_they_are_asked_for_and_tell_what_moved()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
            .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4"))
            .With(
                Route("desk/aux/2", "desk/transmit/1"),
                Route("desk/aux/1", "desk/transmit/2"),
                Route(null, "desk/transmit/3-4"),
                Route(null, "desk/out/1-2")
            ) with
        {
            Feeds = [Feed("p", FeedRole.Monitor, "desk/aux/1-2", "box/out/1-2")],
        };
        var engine = RoutingEngine.CreateBuilder().Build();
        var only = new FixOptions { Rules = ["pair-swapped"] };

        Assert.Empty(engine.Fix(show, only).Applied);
        var applied = Assert.Single(engine.Fix(show, only with { IncludeUnsafe = true }).Applied);
        Assert.Equal(
            ["box/out/1: desk/aux/2 > desk/aux/1", "box/out/2: desk/aux/1 > desk/aux/2"],
            applied.Moves.Select(move => $"{move.At}: {move.Before} > {move.After}")
        );
    }

    [Fact]
    public void A_fix_that_brings_a_new_error_is_refused_and_says_which()
    {
        var result = Engine(new Speaks("TT01", "A", Severity.Warning), new Speaks("TT02", "B", Severity.Error), new Renames("TT01", "B", FixSafety.Unsafe))
            .Fix(Labelled("A"), new FixOptions { IncludeUnsafe = true, Rules = ["TT01"] });

        Assert.Empty(result.Applied);
        Assert.Equal("it would bring a new error, TT02: The label is B.", Assert.Single(result.Refused).Reason);
        Assert.Equal(Labelled("A"), result.Show);
    }

    [Fact]
    public void A_fix_that_calls_itself_safe_is_held_to_it()
    {
        var engine = Engine(new Speaks("TT01", "A", Severity.Warning), new Speaks("TT02", "B", Severity.Note), new Renames("TT01", "B", FixSafety.Safe));

        var safe = engine.Fix(Labelled("A"), new FixOptions { Rules = ["TT01"] });
        Assert.Equal("it would bring a new finding, TT02: The label is B.", Assert.Single(safe.Refused).Reason);

        var applied = Assert.Single(engine.Fix(Labelled("A"), new FixOptions { Rules = ["TT01"], IncludeUnsafe = true }).Applied);
        Assert.Equal(FixSafety.Unsafe, applied.Fix.Safety);
    }

    [Fact]
    public void A_fix_that_does_not_help_or_does_not_fit_is_refused()
    {
        var idle = Engine(new Speaks("TT01", "A", Severity.Warning), new Renames("TT01", "A", FixSafety.Safe))
            .Fix(Labelled("A"), new FixOptions { Rules = ["TT01"] });
        Assert.Equal("the finding would still be there", Assert.Single(idle.Refused).Reason);

        var misfit = Engine(new Speaks("TT01", "A", Severity.Warning), new Renames("TT01", "B", FixSafety.Safe, "other"))
            .Fix(Labelled("A"), new FixOptions { Rules = ["TT01"] });
        Assert.Equal("the document has something else at /patch/labels/0 than the fix expects", Assert.Single(misfit.Refused).Reason);
    }

    [Fact]
    public void Fixes_that_undo_one_another_stop_where_they_began_and_are_named()
    {
        var engine = Engine(
            new Speaks("TT01", "A", Severity.Warning),
            new Speaks("TT02", "B", Severity.Warning),
            new Renames("TT01", "B", FixSafety.Unsafe),
            new Renames("TT02", "A", FixSafety.Unsafe)
        );
        var result = engine.Fix(Labelled("A"), new FixOptions { IncludeUnsafe = true, Rules = ["TT01", "TT02"] });

        Assert.Equal(["TT01", "TT02"], result.Circle);
        Assert.Equal(Labelled("A"), result.Show);
        Assert.Empty(result.Applied);
        Assert.Contains("TT01, TT02 undo one another", result.Refused[^1].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_without_end_is_stopped_by_its_bound()
    {
        var engine = Engine(new Speaks("TT01", "", Severity.Warning), new Grows("TT01"));
        var result = engine.Fix(
            Labelled("A"),
            new FixOptions
            {
                IncludeUnsafe = true,
                Rules = ["TT01"],
                MaxTrials = 7,
            }
        );
        Assert.True(result.IsStopped);
        Assert.Equal(7, result.Applied.Count);
    }

    [Fact]
    public void A_provider_that_fails_is_told_and_the_others_go_on()
    {
        var engine = Engine(
            new Speaks("TT01", "", Severity.Note),
            new Speaks("TT02", "A", Severity.Warning),
            new Fails("TT01"),
            new Renames("TT02", "C", FixSafety.Unsafe)
        );
        var result = engine.Fix(Labelled("A"), new FixOptions { IncludeUnsafe = true, Rules = ["TT01", "TT02"] });
        Assert.Equal("C", Assert.Single(result.Show.Patch.Labels).Text);
        Assert.Contains(result.Refused, refused => refused.Reason == "looking for fixes failed: InvalidOperationException: broken on purpose");
    }

    [Fact]
    public void Offers_are_tried_first_and_what_does_not_hold_is_left_out()
    {
        var engine = Engine(
            new Speaks("TT01", "A", Severity.Warning),
            new Speaks("TT02", "B", Severity.Error),
            new Speaks("TT03", "C", Severity.Note),
            new Renames("TT01", "B", FixSafety.Safe),
            new Renames("TT01", "C", FixSafety.Safe),
            new Renames("TT01", "D", FixSafety.Safe)
        );
        var resolved = engine.Resolve(Labelled("A"));
        var check = engine.Check(resolved);
        var offers = engine.OfferFixes(resolved, check, check.Findings.Single(finding => finding.Rule == "TT01"));
        Assert.Equal(["Name it D Safe", "Name it C Unsafe"], offers.Select(offer => $"{offer.Title} {offer.Safety}"));
    }

    [Fact]
    public void A_fix_has_edits_unless_it_is_manual() => Assert.Throws<ArgumentException>(() => Fix.Of("Nothing", FixSafety.Safe, default));

    private static RoutingEngine Engine(params object[] parts)
    {
        var builder = RoutingEngine.CreateBuilder();
        foreach (var part in parts)
        {
            _ = part is Rule rule ? builder.AddRule(rule) : builder.AddFixes((FixProvider)part);
        }

        return builder.Build();
    }

    /// <summary>Reports a label of one text; of any text when none is given, and then by its text.</summary>
    private sealed class Speaks(string id, string text, Severity severity) : Rule<ResolvedShow>
    {
        public override RuleDescriptor Descriptor { get; } =
            new()
            {
                Id = id,
                Name = id.ToLowerInvariant(),
                Title = "Test",
                Family = RuleFamily.Labels,
                Severity = severity,
                Checks = "A label.",
                Why = "A test needs it.",
                Remedy = "None.",
                Source = "common practice, no source",
            };

        public override void Check(RuleContext context, ResolvedShow subject)
        {
            if (text.Length == 0 || context.Labels[0].Text == text)
            {
                context.Report($"The label is {context.Labels[0].Text}.", "/patch/labels/0", Entity.Of("text", context.Labels[0].Text));
            }
        }
    }

    private sealed class Renames(string rule, string text, FixSafety safety, string? expected = null) : FixProvider
    {
        public override string RuleId => rule;

        public override ValueList<Fix> Propose(FixContext context, Finding finding)
        {
            var label = context.Show.Patch.Labels[0];
            return
            [
                Fix.Of(
                    $"Name it {text}",
                    safety,
                    [ShowEdit.Replace(ShowLists.Labels, 0, label with { Text = expected ?? label.Text }, label with { Text = text })]
                ),
            ];
        }
    }

    private sealed class Grows(string rule) : FixProvider
    {
        public override string RuleId => rule;

        public override ValueList<Fix> Propose(FixContext context, Finding finding)
        {
            var label = context.Show.Patch.Labels[0];
            return [Fix.Of("Grow", FixSafety.Unsafe, [ShowEdit.Replace(ShowLists.Labels, 0, label, label with { Text = label.Text + "A" })])];
        }
    }

    private sealed class Fails(string rule) : FixProvider
    {
        public override string RuleId => rule;

        public override ValueList<Fix> Propose(FixContext context, Finding finding) => throw new InvalidOperationException("broken on purpose");
    }
}
