using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Fixing;

/// <summary>A fix that calls itself safe and brings another signal somewhere.</summary>
public sealed class SafeFixTests
{
    private static readonly Show Show = Of(("desk", SmallProfiles.Console))
        .With(Route("desk/aux/1", "desk/out/1"), Route("desk/in/1", "desk/channel/1"), Route(null, "desk/out/2"), Route(null, "desk/transmit/1-4"));

    [Theory]
    [InlineData(0, "desk/aux/2", "desk/out/1", "desk/aux/1")]
    [InlineData(0, null, "desk/out/1", "desk/aux/1")]
    [InlineData(1, "desk/in/2", "desk/channel/1", "desk/in/1")]
    [InlineData(2, "desk/aux/1", "desk/out/2", null)]
    public void What_changes_what_an_output_or_a_channel_carries_is_not_safe(int route, string? source, string at, string? carried)
    {
        var engine = RoutingEngine.CreateBuilder().AddRule(new Says()).AddFixes(new Reroutes(route, source)).Build();
        var only = new FixOptions { Rules = ["TT01"] };

        var kept = engine.Fix(Show, only);
        Assert.Equal($"it would change what {at} carries", Assert.Single(kept.Refused).Reason);
        Assert.Equal(Show, kept.Show);

        var applied = Assert.Single(engine.Fix(Show, only with { IncludeUnsafe = true }).Applied);
        Assert.Equal(FixSafety.Unsafe, applied.Fix.Safety);
        Assert.Equal([new SinkMove(At(at)[0], carried is null ? null : At(carried)[0], source is null ? null : At(source)[0])], applied.Moves);

        var check = engine.Check(engine.Resolve(Show));
        var offer = Assert.Single(engine.OfferFixes(engine.Resolve(Show), check, check.Findings.Single(finding => finding.Rule == "TT01")));
        Assert.Equal(FixSafety.Unsafe, offer.Safety);
    }

    /// <summary>Speaks until the patch has a label.</summary>
    private sealed class Says : Rule<ResolvedShow>
    {
        public override RuleDescriptor Descriptor { get; } =
            new()
            {
                Id = "TT01",
                Name = "tt01",
                Title = "Test",
                Family = RuleFamily.Labels,
                Severity = Severity.Error,
                Checks = "That there is a label.",
                Why = "A test needs it.",
                Remedy = "None.",
                Source = "common practice, no source",
            };

        public override void Check(RuleContext context, ResolvedShow subject)
        {
            if (context.Labels.Count == 0)
            {
                context.Report("There is no label.", "/patch/labels", Entity.Of("text", "none"));
            }
        }
    }

    /// <summary>Writes the label, and another source into a route beside it.</summary>
    private sealed class Reroutes(int route, string? source) : FixProvider
    {
        public override string RuleId => "TT01";

        public override ValueList<Fix> Propose(FixContext context, Finding finding)
        {
            var old = context.Show.Patch.Routes[route];
            return
            [
                Fix.Of(
                    "Write a label",
                    FixSafety.Safe,
                    [
                        ShowEdit.Insert(ShowLists.Labels, 0, new PointLabel { At = At("desk/aux/8"), Text = "A" }),
                        ShowEdit.Replace(ShowLists.Routes, route, old, old with { From = source is null ? null : At(source) }),
                    ]
                ),
            ];
        }
    }
}
