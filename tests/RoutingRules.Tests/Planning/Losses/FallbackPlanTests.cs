using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Answers;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Planning.Losses.ImpactRig;

namespace RoutingRules.Tests.Planning.Losses;

/// <summary>Plans after a loss: what goes where, and what stays silent.</summary>
public sealed class FallbackPlanTests
{
    [Fact]
    public void A_plan_moves_what_was_at_the_box_to_the_other_one_and_the_cable_with_it()
    {
        var ring = Stage with { Rig = Stage.Rig with { Links = Stage.Rig.Links.Append(Link("ring", "desk/net/2", "b/net/2")).ToValueList() } };
        var plan = Loss(Ask(ring), "a").Plan!;

        Assert.Empty(plan.Unrecovered);
        Assert.Equal(["ears/1", "main/1", "wedges/1", "voice"], plan.Recovered.Select(recovered => recovered.Demand));
        Assert.All(plan.Recovered, recovered => Assert.Equal("b", recovered.To.Device.Value));
        Assert.Equal(4, plan.Moves);
        Assert.Equal(["amp/in/1"], Assert.Single(plan.Steps, step => step.Demand == "main/1").CableTo.Select(point => point.ToString()));
        Assert.All(plan.Steps.Where(step => step.Kind == FallbackStepKind.Replug), step => Assert.True(step.IsElsewhere));

        // Carried out on the document, without the box.
        var after = Promise.Resolve(RemovalOracle.Without(plan.Apply(ring), [new LostThing { Kind = LossKind.Device, Id = "a" }]));
        Assert.Equal("desk/main/1", RemovalOracle.Source(after, after, At("amp/in/1")[0]).ToString());
        Assert.Equal("desk/main/1", RemovalOracle.Source(after, after, At("b/out/1")[0]).ToString());
        Assert.Equal("desk/aux/2", RemovalOracle.Source(after, after, At("b/out/4")[0]).ToString());
        Assert.Equal("desk/aux/1", RemovalOracle.Source(after, after, plan.Recovered[0].To[0]).ToString());
        Assert.Equal(plan.Recovered[3].To.ToString(), RemovalOracle.Source(after, after, At("desk/channel/1")[0]).ToString());
    }

    private static LossImpact Pair(ImpactAnswer answer, string one, string other) =>
        Assert.Single(answer.Pairs, pair => pair.Lost[0].Id == one && pair.Lost[1].Id == other);

    [Fact]
    public void A_pair_has_a_plan_that_holds_under_both_losses()
    {
        var pair = Pair(
            Ask(
                Ring,
                new ImpactOptions
                {
                    Pairs = true,
                    SetSize = 0,
                    Kinds = [LossKind.Device],
                }
            ),
            "b",
            "amp"
        );
        var plan = pair.Plan!;

        // The amplifier takes main with it; its spare and the second wedge go to the box that is left.
        Assert.Equal(["spare/1", "wedges/2"], plan.Recovered.Select(recovered => recovered.Demand));
        Assert.All(plan.Recovered, recovered => Assert.Equal("a", recovered.To.Device.Value));
        Assert.Equal("main/1", Assert.Single(plan.Unrecovered).Demand);
        Assert.Contains("is lost", plan.Unrecovered[0].Reason, StringComparison.Ordinal);
        var after = Promise.Resolve(RemovalOracle.Without(plan.Apply(Ring), pair.Lost));
        Assert.Equal("desk/main/1", RemovalOracle.Source(after, after, plan.Recovered[0].To[0]).ToString());
        Assert.Equal("desk/aux/2", RemovalOracle.Source(after, after, plan.Recovered[1].To[0]).ToString());
        Assert.Equal("desk/aux/1", RemovalOracle.Source(after, after, At("a/out/3")[0]).ToString());
        Assert.Equal("a/in/1", RemovalOracle.Source(after, after, At("desk/channel/1")[0]).ToString());
    }

    [Fact]
    public void A_cable_that_is_one_of_a_pair_is_not_plugged_anywhere()
    {
        var plan = Pair(
            Ask(
                Ring,
                new ImpactOptions
                {
                    Pairs = true,
                    SetSize = 0,
                    Kinds = [LossKind.Device, LossKind.Cable],
                }
            ),
            "b",
            "a/out/1 to amp/in/1"
        ).Plan!;

        Assert.Contains(plan.Recovered, recovered => recovered.Demand == "spare/1");
        Assert.Contains(plan.Unrecovered, entry => entry is { Demand: "main/1", Reason: "The cable to amp/in/1 is lost." });
        Assert.DoesNotContain(plan.Steps, step => step.CableTo.Contains(At("amp/in/1")[0]));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(8, 2)]
    public void A_plan_for_a_pair_keeps_to_the_moves_of_one_loss(int moves, int used) =>
        Assert.Equal(
            used,
            Pair(
                Ask(
                    Ring,
                    new ImpactOptions
                    {
                        Pairs = true,
                        SetSize = 0,
                        Moves = moves,
                        Kinds = [LossKind.Device],
                    }
                ),
                "b",
                "amp"
            ).Plan!.Moves
        );

    [Fact]
    public void Without_recovery_pairs_have_no_plan_either() =>
        Assert.All(
            Ask(
                Ring,
                new ImpactOptions
                {
                    Pairs = true,
                    Recovery = false,
                    SetSize = 0,
                }
            ).Pairs,
            pair => Assert.Null(pair.Plan)
        );

    [Fact]
    public void Pairs_that_the_same_steps_mend_share_a_card_and_every_plan_is_in_the_json()
    {
        // The console has nothing free, so that nothing can be done about both boxes.
        var ring = Ring with
        {
            Rig = Ring.Rig with
            {
                Reserved = [new() { At = At("desk/out/1-2"), Reason = "guest desk" }, new() { At = At("desk/in/1-2"), Reason = "guest desk" }],
            },
        };
        var answer = Ask(
            ring,
            new ImpactOptions
            {
                Pairs = true,
                SetSize = 0,
                Kinds = [LossKind.Device, LossKind.Cable],
            }
        );
        var text = ImpactReport.Text(answer, ring);
        using var json = new MemoryStream();
        ImpactJson.Write(answer, json);
        using var read = System.Text.Json.JsonDocument.Parse(json.ToArray());

        Assert.Contains("\nIf b and amp fail\n", text, StringComparison.Ordinal);
        Assert.Contains("\nIf b and cable a/out/1 to amp/in/1 fail\n", text, StringComparison.Ordinal);
        Assert.Equal(answer.Pairs.Count, read.RootElement.GetProperty("pairs").EnumerateArray().Count(pair => pair.TryGetProperty("plan", out _)));
        var cards = answer.Pairs.Where(pair => !pair.Plan!.Recovered.IsEmpty).Select(pair => (pair.Subjects, pair.Outputs, pair.Plan)).Distinct().Count();
        Assert.True(cards < answer.Pairs.Count);
        Assert.Equal(
            cards,
            text.Split('\n').Count(line => line.StartsWith("If ", StringComparison.Ordinal) && line.EndsWith(" fail", StringComparison.Ordinal))
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    public void A_plan_keeps_to_its_moves_and_takes_the_important_first(int moves)
    {
        var ring = Stage with { Rig = Stage.Rig with { Links = Stage.Rig.Links.Append(Link("ring", "desk/net/2", "b/net/2")).ToValueList() } };
        var plan = Loss(Ask(ring, new ImpactOptions { Moves = moves, SetSize = 0 }), "a").Plan!;

        Assert.Equal(moves, plan.Moves);
        Assert.Equal(new[] { "ears/1", "main/1", "wedges/1" }.Take(moves), plan.Recovered.Select(recovered => recovered.Demand));
        Assert.All(plan.Unrecovered, unrecovered => Assert.Equal("The plan has used all its moves.", unrecovered.Reason));
    }

    [Fact]
    public void What_has_lost_its_source_is_not_planned_for()
    {
        var plan = Loss(Ask(Stage), "desk").Plan!;

        Assert.Empty(plan.Steps);
        Assert.Empty(plan.Recovered);
        Assert.Contains(plan.Unrecovered, entry => entry is { Demand: "ears/1", Reason: "Its source desk/aux/1 is lost." });
        Assert.Contains(plan.Unrecovered, entry => entry.Demand == "voice" && entry.Sink == At("desk/channel/1"));
    }

    [Fact]
    public void What_stays_silent_for_one_reason_stands_in_one_row_and_nothing_is_left_out()
    {
        var answer = Ask(Stage, new ImpactOptions { Kinds = [LossKind.Device], SetSize = 0 });
        var plan = Loss(answer, "a").Plan!;
        var rows = System
            .Xml.Linq.XDocument.Parse(ImpactReport.Html(answer, Stage))
            .Descendants("section")
            .Single(section => section.Descendants("h2").Single().Value == "If a fails")
            .Descendants("table")
            .Single(table => table.Descendants("th").First().Value == "Stays silent")
            .Element("tbody")!
            .Elements("tr")
            .ToArray();

        Assert.Equal(plan.Unrecovered.Select(unrecovered => unrecovered.Reason).Distinct(), rows.Select(row => row.Element("td")!.Value));
        Assert.Equal(plan.Unrecovered.Count, rows.Sum(row => row.Element("th")!.Elements("p").Sum(names => names.Value.Split(';').Length)));
    }
}
