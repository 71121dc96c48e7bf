using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Planning.Changeovers;

public class LabelStepTests
{
    [Fact]
    public void Every_label_to_write_is_said_with_its_text()
    {
        var rig = SmallShow.Of(("desk", SmallProfiles.Console));
        var before = With(rig, ("desk/channel/1", "KICK"), ("desk/channel/4", "CELLO"));
        var after = With(rig, ("desk/channel/1", "SNARE"), ("desk/channel/2-3", "KEYS"));

        var plan = RoutingEngine.CreateBuilder().Build().PlanChangeover(before, after);

        var step = Assert.Single(plan.Steps, step => step.Phase == ChangeoverPhase.Labels);
        Assert.Equal(["desk/channel/1: SNARE", "desk/channel/2-3: KEYS", "desk/channel/4: (empty)"], step.Details);
    }

    private static Show With(Show show, params (string At, string Text)[] labels) =>
        show with
        {
            Patch = show.Patch with { Labels = [.. labels.Select(label => new PointLabel { At = SmallShow.At(label.At), Text = label.Text })] },
        };
}
