using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Planning.Changeovers.ChangeoverShows;

namespace RoutingRules.Tests.Planning.Changeovers;

public sealed class FoldedChangeoverTests
{
    [Fact]
    public void What_one_recall_does_is_one_task_with_its_labels_and_takes_its_time_once()
    {
        var before = First.With(Route("desk/aux/1", "desk/transmit/1"), Route("desk/aux/2", "desk/transmit/2"));
        var after = First.With(Route("desk/aux/7", "desk/transmit/1"), Route("desk/aux/5", "desk/transmit/2")) with
        {
            Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/7", "box/out/1"), Feed("main", FeedRole.Main, "desk/aux/5", "box/out/2")],
        };
        var labelled = after with { Patch = after.Patch with { Labels = [new PointLabel { At = At("desk/channel/1"), Text = "Voice" }] } };

        var task = Assert.Single(TestEngine.PlanChangeover(before, labelled, new Pace { SecondsToLoad = 9 }).Tasks, task => task.IsLoad);

        Assert.Equal("Recall the scene of the next act, or set this by hand.", task.Text);
        Assert.Equal(
            ["Route desk/aux/7 to desk/transmit/1.", "Route desk/aux/5 to desk/transmit/2.", "Load the labels of desk/channel/1."],
            task.Steps.Select(step => step.Text)
        );
        Assert.Equal(9, task.Seconds);
    }

    [Fact]
    public void Pulls_at_one_place_are_one_task_and_plugs_stay_one_by_one()
    {
        var before = First with { Lines = [.. First.Lines, Line("choir", "box/in/3", "desk/channel/3")] };
        var after = First with { Lines = [Line("organ", "box/in/4", "desk/channel/4"), Line("bell", "box/in/1", "desk/channel/1")] };

        Assert.Equal(
            ["Pull what the next act does not need.: 2", "At box/in/1 pull 'voice' and plug 'bell'.: 1", "Plug 'organ' into box/in/4.: 1"],
            TestEngine
                .PlanChangeover(before, after)
                .Tasks.Where(task => task.Steps[0].Phase == ChangeoverPhase.Stage)
                .Select(task => $"{task.Text}: {task.Steps.Count}")
        );
    }

    [Fact]
    public void Nothing_is_loaded_into_a_device_before_it_is_brought_in_and_powered()
    {
        var grown = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("guest", SmallProfiles.ClearableBox));
        var after = First with
        {
            Rig = grown.Rig,
            Patch = First.Patch with
            {
                Streams = [.. First.Patch.Streams, Stream("guest-up", "guest/transmit/1-4", "desk/receive/5-8")],
                Routes = [.. First.Patch.Routes, Route("guest/in/1", "guest/transmit/1"), Route("desk/receive/5", "desk/channel/6")],
            },
            Lines = [.. First.Lines, Line("sax", "guest/in/1", "desk/channel/6")],
        };
        var plan = TestEngine.PlanChangeover(First, after);
        var arrival = Assert.Single(plan.Tasks, task => task.Text.StartsWith("Bring in 'guest'", StringComparison.Ordinal));

        Assert.Equal(ChangeoverTiming.ClearStage, arrival.Timing);
        Assert.All(plan.Tasks.Where(task => task.Place == new Id<Device>("guest")), task => Assert.True(task.Number >= arrival.Number, task.Text));
        Assert.Contains(plan.Tasks, task => task.IsLoad && task.Place == new Id<Device>("guest"));
    }
}
