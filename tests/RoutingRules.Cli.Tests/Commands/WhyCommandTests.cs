using System.Text;
using System.Text.Json;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Documents.Formats;
using RoutingRules.Schema;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class WhyCommandTests
{
    private static readonly string Open = Shows.Small.Replace("\"at\": \"box/out/1\"", "\"devices\": [ \"box\" ]", StringComparison.Ordinal);

    private static ToolResult Why(params string[] arguments) => Tool.Run(["why", "-", .. arguments], Encoding.UTF8.GetBytes(Open)).Civil();

    [Fact]
    public void The_place_is_explained_on_standard_output()
    {
        var result = Why("mon");

        Assert.Equal((0, ""), (result.Code, result.Error));
        Assert.StartsWith("Monitor [mon/1] is at box/out/1: it was there before, ", result.Out, StringComparison.Ordinal);
        Assert.Contains(
            "Without this place it would be at box/out/2. That would move 1 more feed or line from where it is plugged.",
            result.Out,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData]
    [InlineData("--at", "box/out/3")]
    [InlineData("--not", "box/out/1")]
    [InlineData("--without", "box/out/1-8")]
    public void The_json_answer_meets_the_published_schema(params string[] more)
    {
        var result = Why([.. more.Prepend("mon"), "--format", "json"]);

        Assert.Empty(SchemaValidator.Validate(SchemaKind.Why, result.OutBytes));
        Assert.Equal("mon/1", JsonDocument.Parse(result.OutBytes).RootElement.GetProperty("decisions")[0].GetProperty("demand").GetString());
    }

    [Fact]
    public void Markdown_has_a_title_and_tables()
    {
        var result = Why("mon", "--format", "markdown", "--not", "box/out/1");

        Assert.StartsWith(
            "# Why mon\n\nIf not at box/out/1, and all else stays as far as it can, Monitor \\[mon/1\\] would go to box/out/2.\n",
            result.Out,
            StringComparison.Ordinal
        );
        Assert.Contains("| place | why not |\n| --- | --- |\n", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_quick_strategy_explains_without_claiming_a_proof()
    {
        var usual = Why("mon", "--format", "json");
        var quick = Why("mon", "--format", "json", "--strategy", "greedy");

        Assert.Equal((0, ""), (quick.Code, quick.Error));
        Assert.Equal("mon/1", JsonDocument.Parse(quick.OutBytes).RootElement.GetProperty("decisions")[0].GetProperty("demand").GetString());
        Assert.NotEqual(usual.Out, quick.Out);
    }

    [Fact]
    public void An_unknown_strategy_is_wrong_usage_and_the_names_there_are_are_told()
    {
        var result = Why("mon", "--strategy", "magic");

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.Contains("--strategy asks for the strategy 'magic', which does not exist; there are exact, greedy", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_has_no_place_ends_with_1()
    {
        var result = Why("mon", "--without", "box/out/1-8");

        Assert.Equal(1, result.Code);
        Assert.StartsWith("Monitor [mon/1] has no place.\n", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_feed_and_its_place_are_found_by_name()
    {
        var show = Encoding.UTF8.GetBytes(Shows.Small);

        Assert.Equal(
            Tool.Run(["why", "-", "mon", "--at", "box/out/3"], show).Civil().Out,
            Tool.Run(["why", "-", "Monitor", "--at", "box output 3"], show).Civil().Out
        );
    }

    [Theory]
    [InlineData("the nearest ids are mon", "mom")]
    [InlineData("--at: nothing is called 'box'", "mon", "--at", "box")]
    [InlineData("beyond the end", "mon", "--not", "box/out/9")]
    [InlineData("ask twice", "mon", "--at", "box/out/1", "--not", "box/out/2")]
    [InlineData("can never be the place of mon/1", "mon", "--at", "desk/in/1")]
    [InlineData("no device, link or point", "mon", "--without", "nobody")]
    [InlineData("there are text, json, markdown", "mon", "--format", "html")]
    public void A_wrong_question_is_wrong_usage_with_a_remedy(string expected, params string[] arguments)
    {
        var result = Why(arguments);

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_document_that_cannot_be_read_is_reported()
    {
        var result = Tool.Run(["why", "-", "mon"], "{"u8.ToArray()).Civil();

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.NotEqual("", result.Error);
    }

    [Fact]
    public void The_same_question_gives_the_same_bytes() => Assert.Equal(Why("mon", "--format", "json").OutBytes, Why("mon", "--format", "json").OutBytes);
}
