using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Planning.RunningOrders;

public sealed class RunningOrderPlannerTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    internal static RunningOrder Run { get; } =
        new()
        {
            Title = "Day",
            Date = new DateOnly(2027, 6, 12),
            Rig = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.FreeBox)).Rig,
            Feeds = [FeedTo("main", FeedRole.Main, "desk/main/1", "box"), FeedTo("talk", FeedRole.Monitor, "desk/aux/8", "box")],
            Lines = [Open("host", 1)],
            Locked = [new("main")],
            Acts =
            [
                Act("one", 10) with
                {
                    Lines = [Open("voice", 2) with { Phantom = PhantomNeed.Required, Equipment = "condenser", Stand = "boom" }],
                    Feeds = [Ears("a", "1", "Ada")],
                },
                Act("two", 12) with
                {
                    Lines =
                    [
                        Open("guitar", 2) with
                        {
                            Phantom = PhantomNeed.Forbidden,
                            Equipment = "condenser",
                        },
                        Open("voice", 3) with
                        {
                            Phantom = PhantomNeed.Required,
                            Equipment = "condenser",
                            Stand = "boom",
                        },
                    ],
                    Without = ["talk"],
                },
            ],
        };

    private static Act Act(string id, int hour) =>
        new()
        {
            Id = new(id),
            Start = new TimeOnly(hour, 0),
            ChangeoverMinutes = 30,
        };

    private static Line Open(string id, int channel) =>
        new()
        {
            Id = new(id),
            Kind = LineKind.Microphone,
            From = new() { Devices = [new("box")] },
            To = [At($"desk/channel/{channel}")],
        };

    private static Feed Ears(string id, string pack, string person) =>
        FeedTo(id, FeedRole.InEar, "desk/aux/1", "box") with
        {
            Pack = pack,
            Person = person,
            Limiter = true,
        };

    private static string[] Rules(RunningOrder run) => [.. Engine.PlanRun(run).RunFindings.Select(finding => finding.Rule)];

    [Fact]
    public void Each_act_is_a_show_with_what_house_and_act_have()
    {
        var plan = Engine.PlanRun(Run);

        Assert.Equal(["main", "talk", "a"], plan.Acts[0].Show.Feeds.Select(feed => feed.Id.Value));
        Assert.Equal(["main"], plan.Acts[1].Show.Feeds.Select(feed => feed.Id.Value));
        Assert.Equal(["host", "guitar", "voice"], plan.Acts[1].Show.Lines.Select(line => line.Id.Value));
        Assert.Equal("Day: one", plan.Acts[0].Show.Title);
        Assert.All(plan.Acts, act => Assert.True(act.IsAssigned && act.Unplaced.IsEmpty));
        Assert.Single(plan.Changeovers);
        Assert.True(plan.RunFindings.IsEmpty);
    }

    [Fact]
    public void Lines_and_feeds_that_two_acts_share_stay_plugged()
    {
        var plan = Engine.PlanRun(Run);
        var places = plan
            .Acts.Select(act => Engine.Resolve(act.Show))
            .Select(show => show.Demands.ToDictionary(demand => demand.Key, demand => show.Graph.Address(demand.Existing, 1)))
            .ToArray();

        Assert.All(["main/1", "host", "voice"], key => Assert.Equal(places[0][key], places[1][key]));
    }

    [Fact]
    public void Phantom_power_gain_and_labels_follow_the_lines()
    {
        var show = Engine.Resolve(Engine.PlanRun(Run).Acts[1].Show);
        var inputs = show
            .Document.Patch.Inputs.SelectMany(input => Enumerable.Range(0, input.At.Width).Select(i => (At: input.At[i], input.Phantom, input.GainOwner)))
            .ToDictionary(input => input.At);
        var voice = inputs[show.Graph.Address(show.Demands[show.Lines[2].Demand].Existing)];
        var guitar = inputs[show.Graph.Address(show.Demands[show.Lines[1].Demand].Existing)];

        Assert.Equal((true, new Id<Device>("desk")), (voice.Phantom, voice.GainOwner));
        Assert.False(guitar.Phantom);
        Assert.Equal(
            [("desk/channel/1", "host"), ("desk/channel/2", "guitar"), ("desk/channel/3", "voice")],
            show.Document.Patch.Labels.Select(label => (label.At.ToString(), label.Text))
        );
    }

    [Fact]
    public void An_act_with_a_patch_is_taken_as_it_is_written()
    {
        var patch = new Patch { Routes = [Route("desk/main/1", "desk/out/1")] };
        var plan = Engine.PlanRun(Run with { Acts = [Run.Acts[0] with { Patch = patch }] });

        Assert.Equal((false, patch), (plan.Acts[0].IsAssigned, plan.Acts[0].Show.Patch));
        Assert.Contains(plan.Acts[0].Check.Findings, finding => finding.Rule == "RR3001");
    }

    [Fact]
    public void The_kit_is_the_most_that_one_act_needs()
    {
        var kit = Engine.PlanRun(Run).Kit;

        Assert.Equal(
            [("condenser", 2, "one two"), ("boom", 1, "one two"), ("1", 1, "one")],
            kit.Select(total => (total.Name, total.Most, string.Join(' ', total.Acts)))
        );
    }

    [Fact]
    public void Findings_that_every_act_has_are_common()
    {
        var unpatched = Run with { Acts = [Run.Acts[0] with { Patch = new Patch() }, Run.Acts[1] with { Patch = new Patch() }] };
        var plan = Engine.PlanRun(unpatched);

        Assert.Contains(plan.CommonFindings, finding => finding.Entities.Contains(RoutingRules.Rules.Entity.Of("feed", "main")));
        Assert.DoesNotContain(plan.OwnFindings(plan.Acts[0]), finding => finding.Entities.Contains(RoutingRules.Rules.Entity.Of("feed", "main")));
        Assert.Contains(plan.OwnFindings(plan.Acts[0]), finding => finding.Entities.Contains(RoutingRules.Rules.Entity.Of("feed", "talk")));
    }

    [Fact]
    public void A_misspelt_name_is_found()
    {
        Assert.Equal(["RR1013"], Rules(Run with { Locked = [new("mian")] }));
        Assert.Equal(["RR1013"], Rules(Run with { Acts = [Run.Acts[0] with { Without = ["hots"] }] }));
    }

    [Fact]
    public void A_locked_feed_cannot_be_changed_or_left_out()
    {
        var other = Run with
        {
            Acts = [Run.Acts[0] with { Feeds = [FeedTo("main", FeedRole.Main, "desk/main/2", "box")] }, Run.Acts[1] with { Without = ["main"] }],
        };
        var plan = Engine.PlanRun(other);

        Assert.Equal(["RR1014", "RR1014"], plan.RunFindings.Select(finding => finding.Rule));
        Assert.All(plan.Acts, act => Assert.Equal(At("desk/main/1"), act.Show.Feeds[0].Source));
    }

    [Fact]
    public void A_locked_feed_that_an_act_patches_elsewhere_is_found()
    {
        var plan = Engine.PlanRun(Run);
        var moved = new Patch
        {
            Routes = [Route("desk/main/1", "desk/transmit/1"), Route("box/receive/1", "box/out/8")],
            Streams = [Stream("s", "desk/transmit/1-4", "box/receive/1-4")],
        };

        Assert.Contains("RR1014", Rules(Run with { Acts = [Run.Acts[0], Run.Acts[1] with { Patch = moved }] }));
        Assert.Empty(plan.RunFindings);
    }

    [Theory]
    [InlineData(10, 10, true)]
    [InlineData(10, 9, true)]
    [InlineData(10, 11, false)]
    public void Acts_stand_in_the_order_of_their_times(int first, int second, bool expected) =>
        Assert.Equal(expected, Rules(Run with { Acts = [Act("one", first), Act("two", second)] }).Contains("RR1015"));

    [Fact]
    public void An_earlier_hour_of_a_later_day_is_in_order_and_equal_ids_are_not()
    {
        Assert.Empty(Rules(Run with { Acts = [Act("one", 20), Act("two", 10) with { Date = new DateOnly(2027, 6, 13) }] }));
        Assert.Equal(["RR1015"], Rules(Run with { Acts = [Act("one", 10), Act("one", 12)] }));
    }

    [Fact]
    public void A_changeover_that_does_not_fit_is_found()
    {
        var finding = Assert.Single(
            Engine
                .PlanRun(
                    Run with
                    {
                        Pace = new() { SecondsToPlug = 600 },
                        Acts = [Run.Acts[0], Run.Acts[1] with { ChangeoverMinutes = 5 }],
                    }
                )
                .RunFindings
        );

        Assert.Equal("RR1016", finding.Rule);
        Assert.EndsWith("and there are 5.", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pack_for_two_people_is_found() =>
        Assert.Equal(
            ["RR1017"],
            Rules(Run with { Acts = [Act("one", 10) with { Feeds = [Ears("a", "1", "Ada"), Ears("b", "1", "Bo") with { Source = At("desk/aux/2") }] }] })
        );

    [Fact]
    public void A_pack_that_rested_for_an_act_comes_to_another_wearer_in_a_step()
    {
        var plan = Engine.PlanRun(
            Run with
            {
                Acts =
                [
                    Run.Acts[0],
                    Run.Acts[1],
                    Act("three", 14) with
                    {
                        Feeds = [Ears("b", "1", "Bo")],
                    },
                    Act("four", 16) with
                    {
                        Feeds = [Ears("b", "1", "Bo")],
                    },
                ],
            }
        );

        Assert.Equal(
            [
                [],
                ["Pack 1 goes from 'Ada' to 'Bo': take it back, wipe it and label it 'Bo'."],
                Array.Empty<string>(),
            ],
            plan.Changeovers.Select(changeover =>
                changeover.Plan.Steps.Where(step => step.Text.StartsWith("Pack", StringComparison.Ordinal)).Select(step => step.Text).ToArray()
            )
        );
    }
}
