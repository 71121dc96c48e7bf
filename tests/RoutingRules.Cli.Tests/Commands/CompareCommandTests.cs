using System.Text.Json;
using System.Text.Json.Nodes;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Documents.Formats;
using RoutingRules.Fixing;
using RoutingRules.Schema;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class CompareCommandTests : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly string first;
    private readonly string second;

    public CompareCommandTests()
    {
        first = folder.Write("first.show.json", Shows.Small);
        second = folder.Write(
            "second.show.json",
            Shows.Small.Replace("\"Small\"", "\"Second\"", StringComparison.Ordinal).Replace("box/out/1", "box/out/2", StringComparison.Ordinal)
        );
    }

    public void Dispose() => folder.Dispose();

    private ToolResult Compare(params string[] more) => Tool.Run(["compare", first, second, .. more]).Civil();

    [Fact]
    public void A_show_compared_with_itself_says_that_nothing_differs()
    {
        var result = Tool.Run("compare", first, first).Civil();

        Assert.Equal((0, ""), (result.Code, result.Error));
        Assert.Contains("Nothing differs.", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void New_findings_end_with_1_and_old_ones_do_not()
    {
        Assert.Equal(1, Compare().Code);
        Assert.Contains("New findings", Compare().Out, StringComparison.Ordinal);
        Assert.Equal(0, Tool.Run("compare", second, second).Code);
    }

    [Fact]
    public void The_json_meets_the_published_schema()
    {
        var result = Compare("--format", "json");

        Assert.Empty(SchemaValidator.Validate(SchemaKind.Comparison, result.OutBytes));
        Assert.False(JsonDocument.Parse(result.OutBytes).RootElement.GetProperty("same").GetBoolean());
    }

    [Fact]
    public void The_patch_turns_the_first_document_into_the_second()
    {
        var patch = JsonPatch.Parse(Compare("--format", "patch").OutBytes);

        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(File.ReadAllText(second)), patch.Apply(JsonNode.Parse(File.ReadAllText(first)))));
    }

    [Theory]
    [InlineData("markdown", "# ")]
    [InlineData("html", "<!DOCTYPE html>")]
    public void People_get_it_in_other_formats_and_in_a_file(string format, string begin)
    {
        var result = Compare("--format", format, "--out", folder.At("answer"));

        Assert.Equal("", result.Out);
        Assert.StartsWith(begin, File.ReadAllText(folder.At("answer")), StringComparison.Ordinal);
    }

    [Fact]
    public void Bad_input_is_told_and_nothing_is_written()
    {
        var bad = folder.Write("bad.show.json", "{");
        Assert.Equal(2, Tool.Run("compare", first, bad, "--out", folder.At("answer")).Civil().Code);
        Assert.Equal(2, Tool.Run("compare", first, folder.At("none.show.json")).Civil().Code);
        Assert.Contains(
            "not 'xml'",
            Tool.Run("compare", first, second, "--format", "xml").Civil().Error.Replace("'xml' is no format", "not 'xml'", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
        Assert.Contains("never overwritten", Compare("--out", second).Error, StringComparison.Ordinal);
        Assert.Contains("both shows cannot come from standard input", Tool.Run("compare", "-", "-").Civil().Error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.At("answer")));
    }
}
