using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.LineChecks;
using RoutingRules.Profiles.Generic;

namespace RoutingRules.Tests.Planning.LineChecks;

public class LineCheckRecorderTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    private static readonly Show Club = ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "examples", "02-club-night.show.json")).Value!;

    [Fact]
    public void A_dead_output_is_marked_and_who_stood_there_has_to_be_assigned_again()
    {
        var record = Record(
            new LineCheckResult
            {
                At = PointRange.Parse("box/out/3"),
                Word = LineCheckWord.Dead,
                Reason = "no signal",
                Since = new DateOnly(2027, 6, 11),
            }
        );

        Assert.Equal(
            [
                new UnavailablePoints
                {
                    At = PointRange.Parse("box/out/3"),
                    Reason = "no signal",
                    Since = new DateOnly(2027, 6, 11),
                },
            ],
            record.Show.Rig.Unavailable
        );
        Assert.Equal(["Monitor singer"], record.ToAssign);
        var result = Assert.Single(record.Results);
        Assert.Equal(["Monitor singer"], result.Stood);
        Assert.Equal([PointRange.Parse("wedge-1/in/1")], result.Cabled);
        Assert.Equal(PointRange.Parse("box/out/5"), result.Free);
    }

    [Fact]
    public void What_the_show_says_already_is_not_said_twice()
    {
        var marked = Record(Dead("box/out/3")).Show;

        var again = Engine.RecordLineCheck(marked, [Dead("box/out/2-4")]);

        Assert.Equal(["box/out/3", "box/out/2", "box/out/4"], again.Show.Rig.Unavailable.Select(entry => entry.At.ToString()));
        Assert.False(Assert.Single(Engine.RecordLineCheck(again.Show, [Dead("box/out/2-4")]).Results).IsNew);
    }

    [Fact]
    public void A_connector_that_works_again_leaves_its_neighbours_marked()
    {
        var marked = Record(Dead("box/out/5-8")).Show;

        var mended = Engine.RecordLineCheck(marked, [new LineCheckResult { At = PointRange.Parse("box/out/6"), Word = LineCheckWord.Works }]);

        Assert.Equal(["box/out/5", "box/out/7-8"], mended.Show.Rig.Unavailable.Select(entry => entry.At.ToString()));
    }

    // Whatever two microphones were exchanged: assigned again, each arrives where it did, from where it is plugged now.
    [Fact]
    public void Any_two_lines_whose_plugs_are_swapped_arrive_again_once_assigned()
    {
        string[] single = ["kick", "snare", "overhead", "bass", "guitar", "voice-1", "voice-2"];
        foreach (var (one, other) in single.SelectMany((one, i) => single[(i + 1)..].Select(other => (one, other))))
        {
            var (at, with) = (Line(Club, one).From.At[0], Line(Club, other).From.At[0]);

            var record = Record(
                new LineCheckResult
                {
                    At = at,
                    Word = LineCheckWord.Swapped,
                    Other = with,
                }
            );

            Assert.Equal((with, at), (Line(record.Show, one).From.At[0], Line(record.Show, other).From.At[0]));
            Assert.Equal(2, record.ToAssign.Count);
            var result = Engine.Assign(record.Show);
            Assert.Empty(result.Unplaced);
            Assert.DoesNotContain(result.Check.Findings, finding => finding.Rule.StartsWith("RR6", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Phantom_power_and_labels_of_inputs_go_with_the_plugs()
    {
        var show = Club with
        {
            Patch = Club.Patch with
            {
                Inputs = [new InputSettings { At = PointRange.Parse("box/in/3-4"), Phantom = true }],
                Labels = [new PointLabel { At = PointRange.Parse("box/in/4"), Text = "BASS" }],
            },
        };

        var record = Engine.RecordLineCheck(show, [Moved("box/in/4", "box/in/7")]);

        Assert.Equal(["box/in/3", "box/in/7"], record.Show.Patch.Inputs.Select(settings => settings.At.ToString()));
        Assert.All(record.Show.Patch.Inputs, settings => Assert.True(settings.Phantom));
        Assert.Equal(["box/in/7"], record.Show.Patch.Labels.Select(label => label.At.ToString()));
    }

    [Fact]
    public void A_cable_found_at_another_output_is_cut_out_of_its_run_and_its_feed_follows_it()
    {
        var record = Record(Moved("box/out/4", "box/out/6"));

        Assert.Contains(record.Show.Rig.Cables, cable => (cable.From.ToString(), cable.To.ToString()) == ("box/out/6", "wedge-2/in/1"));
        Assert.DoesNotContain(record.Show.Rig.Cables, cable => cable.From.ToString() == "box/out/4");
        var result = Engine.Assign(record.Show);
        Assert.Equal("box/out/6", result.Placements.Single(placement => placement.Demand == "mon-2/1").At.ToString());
    }

    [Fact]
    public void Three_plugs_that_went_round_are_told_one_by_one_in_any_order()
    {
        LineCheckResult[] round = [Moved("box/in/1", "box/in/2"), Moved("box/in/2", "box/in/5"), Moved("box/in/5", "box/in/1")];

        foreach (
            var order in (int[][])
                [
                    [0, 1, 2],
                    [2, 1, 0],
                    [1, 0, 2],
                ]
        )
        {
            var record = Engine.RecordLineCheck(Club, [.. order.Select(index => round[index])]);

            Assert.Empty(record.Problems);
            Assert.Equal(["box/in/2", "box/in/5", "box/in/1"], new[] { "kick", "snare", "guitar" }.Select(id => Line(record.Show, id).From.At[0].ToString()));
        }
    }

    [Fact]
    public void Who_names_a_dead_connector_may_be_let_go()
    {
        var still = Record(Dead("box/in/3"));
        var freed = Engine.RecordLineCheck(Club, [Dead("box/in/3")], freesDead: true);

        Assert.Equal(["Overhead"], still.AtDead);
        Assert.False(still.AreFreed);
        Assert.Equal(["Overhead"], freed.AtDead);
        Assert.True(freed.AreFreed);
        Assert.Equal(["box"], Line(freed.Show, "overhead").From.Devices.Select(id => id.Value));
        var result = Engine.Assign(freed.Show);
        Assert.Empty(result.Unplaced);
        Assert.NotEqual("box/in/3", result.Placements.Single(placement => placement.Demand == "overhead").At.ToString());
    }

    [Theory]
    [InlineData("box/in/1", LineCheckWord.Moved, "box/in/2", "box/in/2 is taken by 'Snare'; say that the two are swapped, or where that one was found.")]
    [InlineData("box/in/1", LineCheckWord.Swapped, "box/out/1", "box/in/1 and box/out/1 must be two inputs or two outputs; plugs are not elsewhere.")]
    [InlineData("box/in/1-2", LineCheckWord.Swapped, "box/in/5", "box/in/1-2 and box/in/5 must be equally many connectors, and are 2 and 1.")]
    [InlineData("box/in/1-2", LineCheckWord.Swapped, "box/in/2-3", "box/in/1-2 and box/in/2-3 must not share a connector; name each once.")]
    [InlineData("box/in/1", LineCheckWord.Swapped, null, "box/in/1 is swapped, but with what is not said; write the other connector.")]
    [InlineData("box/in/99", LineCheckWord.Dead, null, "there is no box/in/99 in the rig; the sheet of the device names its connectors.")]
    [InlineData("box/in/1", LineCheckWord.Dead, "box/in/2", "box/in/1 has a second place beside it, which only swapped and moved plugs have; leave it away.")]
    [InlineData(
        "box/in/9",
        LineCheckWord.Swapped,
        "box/in/10",
        "'Keys' is a pair at box/in/9-10, and its sides would stand apart or crossed; a show cannot say that. "
            + "Plug the two sides next to each other, left first."
    )]
    public void What_cannot_be_is_told_and_nothing_is_changed(string at, LineCheckWord word, string? other, string problem)
    {
        var record = Record(
            Dead("box/out/7"),
            new LineCheckResult
            {
                At = PointRange.Parse(at),
                Word = word,
                Other = other is null ? null : PointRange.Parse(other),
            }
        );

        Assert.Equal([new LineCheckProblem { Index = 1, Text = problem }], record.Problems);
        Assert.Same(Club, record.Show);
        Assert.Empty(record.Edits);
    }

    [Fact]
    public void One_plug_cannot_be_at_two_places_nor_two_plugs_at_one()
    {
        Assert.Equal(
            "what belongs at box/in/1 was found at box/in/6 already, and cannot be at box/in/7 as well; keep one of the two.",
            Assert.Single(Record(Moved("box/in/1", "box/in/6"), Moved("box/in/1", "box/in/7")).Problems).Text
        );
        Assert.Equal(
            "what belongs at box/in/1 was found at box/in/6 already, so what belongs at box/in/2 cannot be there too; look once more.",
            Assert.Single(Record(Moved("box/in/1", "box/in/6"), Moved("box/in/2", "box/in/6")).Problems).Text
        );
    }

    private static LineCheckRecord Record(params LineCheckResult[] results) => Engine.RecordLineCheck(Club, results);

    private static LineCheckResult Dead(string at) => new() { At = PointRange.Parse(at), Word = LineCheckWord.Dead };

    private static LineCheckResult Moved(string at, string other) =>
        new()
        {
            At = PointRange.Parse(at),
            Word = LineCheckWord.Moved,
            Other = PointRange.Parse(other),
        };

    private static Line Line(Show show, string id) => show.Lines.Single(line => line.Id.Value == id);
}
