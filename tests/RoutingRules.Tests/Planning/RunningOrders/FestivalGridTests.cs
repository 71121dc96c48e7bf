using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.RunningOrders;
using RoutingRules.Reports.Answers;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Planning.RunningOrders;

public sealed class FestivalGridTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    private static RunningOrder Run => RunningOrderPlannerTests.Run;

    [Fact]
    public void The_grid_has_each_line_of_each_act_at_its_input_and_marks_what_stays()
    {
        var plan = Engine.PlanRun(Run);
        string[] Named(string name) => [.. plan.Grid.Where(row => row.Acts.Any(cell => cell?.Line == name)).Select(Told)];

        Assert.Equal(3, plan.Grid.Count);
        Assert.Equal(["host, = host"], Named("host"));
        Assert.Equal(["voice, = voice"], Named("voice"));
        Assert.Equal(["nothing, guitar"], Named("guitar"));

        static string Told(GridRow row) =>
            string.Join(
                ", ",
                row.Acts.Select(cell =>
                    cell is null ? "nothing"
                    : cell.Stays ? $"= {cell.Line}"
                    : cell.Line
                )
            );
    }

    [Fact]
    public void A_half_of_a_pair_and_a_line_that_another_replaces_do_not_stay()
    {
        static Line At(string id, string input, int width) =>
            new()
            {
                Id = new(id),
                Kind = LineKind.Microphone,
                Width = width,
                From = new() { At = [SmallShow.At(input)] },
                To = [SmallShow.At($"desk/channel/{(width == 2 ? "5-6" : "7")}")],
            };

        var plan = Engine.PlanRun(
            Run with
            {
                Lines = [],
                Acts =
                [
                    Run.Acts[0] with
                    {
                        Lines = [At("keys", "box/in/1-2", 2)],
                        Patch = new Patch(),
                    },
                    Run.Acts[1] with
                    {
                        Lines = [At("keys", "box/in/2-3", 2), At("bass", "box/in/1", 1)],
                        Patch = new Patch(),
                    },
                ],
            }
        );

        Assert.Equal(
            [("box/in/1", "keys L", "bass"), ("box/in/2", "keys R", "keys L"), ("box/in/3", null, "keys R")],
            plan.Grid.Select(row => (row.At.ToString(), row.Acts[0]?.Line, row.Acts[1]?.Line))
        );
        Assert.DoesNotContain(plan.Grid.SelectMany(row => row.Acts), cell => cell?.Stays == true);
    }

    [Fact]
    public void The_printed_grid_names_inputs_and_tells_what_stays_without_colour()
    {
        var text = ChangeoverReport.Write(Engine.PlanRun(Run), PageFormat.Text);
        var page = text.Split('\f').Single(page => page.Contains("\nFestival grid\n", StringComparison.Ordinal));

        Assert.Matches("box/in/[0-9] +voice += voice", page);
        Assert.Matches("box/in/[0-9] +\u2013 +guitar", page);
    }
}
