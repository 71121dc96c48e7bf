using System.Text;
using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class TraceCommandTests
{
    private static ToolResult Trace(string point, string? show = null) => Tool.Run(["trace", "-", point], Encoding.UTF8.GetBytes(show ?? Shows.Small)).Civil();

    [Fact]
    public void A_bus_is_followed_to_its_output()
    {
        var result = Trace("desk/aux/1");

        Assert.Equal(0, result.Code);
        Assert.Equal(
            """
            desk/aux/1

            Where it comes from
              desk/aux/1 is a source inside the device.

            Where it goes
              desk/transmit/1  by route 1
                box/receive/1  in stream s1, channel 1, block 1 to block 1, 1 ms
                  box/out/1    by fixed routing of the device, ends here

            """,
            result.Out
        );
    }

    [Fact]
    public void An_output_is_followed_back_and_its_latency_added_up()
    {
        var result = Trace("box/out/1");

        // Transmit 0.3 of the console, 1 of the packet, 0.6 of the box's output.
        Assert.Contains("Latency as far as the document states it: 1.9 ms.", result.Out, StringComparison.Ordinal);
        Assert.Contains("Nowhere", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_silent_output_says_where_and_why_the_way_ends()
    {
        Assert.Contains("Route 2 of the patch clears desk/transmit/3", Trace("box/out/3").Out, StringComparison.Ordinal);
        Assert.Contains("No stream arrives at box/receive/5", Trace("box/out/5").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("box output 1", "box/out/1")]
    [InlineData("BOX  out 1", "box/out/1")]
    [InlineData("desk channel 2", "desk/channel/2")]
    [InlineData("monitor", "desk/aux/1")]
    public void A_point_is_found_by_what_it_is_called(string name, string point)
    {
        Assert.Equal(Trace(point).Out, Trace(name).Out);
        Assert.StartsWith($"{point}\n", Trace(name).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_label_of_a_device_is_said_with_its_address_behind()
    {
        var show = Shows.Small.Replace("\"id\": \"box\",", "\"id\": \"box\", \"label\": \"Riser box\",", StringComparison.Ordinal);

        Assert.StartsWith("Riser box output 1 (box/out/1)\n", Trace("riser box output 1", show).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("desk/aux", "wrong number of parts")]
    [InlineData("desk/aux/0", "count from 1")]
    [InlineData("desk/aux/2-1", "runs backwards")]
    [InlineData("desk/aux/1-2", "ask about one, such as desk/aux/1")]
    [InlineData("desk/aux/99999999999", "above 99999")]
    [InlineData("desk/aux/11", "has the numbers 1 to 10")]
    [InlineData("desk/oux/1", "it has aux, main, matrix")]
    [InlineData("dusk/aux/1", "it has desk, box")]
    [InlineData("", "is empty")]
    [InlineData("Monitr", "nothing is called 'Monitr'. Did you mean 'Monitor'?")]
    [InlineData("box 1", "ask about one: box input 1, box output 1")]
    public void A_point_that_is_none_is_wrong_usage_with_a_remedy(string point, string expected)
    {
        var result = Trace(point);

        Assert.Equal(2, result.Code);
        Assert.Equal("", result.Out);
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_device_without_a_known_profile_says_so()
    {
        var result = Trace("box/out/1", Shows.Small.Replace("stage-box-small", "stage-bux-small", StringComparison.Ordinal));

        Assert.Equal(2, result.Code);
        Assert.Contains("'generic/stage-bux-small'", result.Error, StringComparison.Ordinal);
        Assert.Contains("--profiles", result.Error, StringComparison.Ordinal);
    }
}
