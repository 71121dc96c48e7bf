using System.Text;
using System.Text.Json;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Documents.Formats;
using RoutingRules.Schema;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class ImpactCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    private static ToolResult Impact(params string[] arguments) => Tool.Run(["impact", "-", .. arguments], Encoding.UTF8.GetBytes(Shows.Small)).Civil();

    [Fact]
    public void The_ranked_table_and_the_cards_stand_on_standard_output()
    {
        var result = Impact();

        Assert.Equal((0, ""), (result.Code, result.Error));
        Assert.Contains("2 single losses are heard, of 2 looked at.\n", result.Out, StringComparison.Ordinal);
        Assert.Contains("1  desk           0             1      0      Other feeds: Monitor  nothing\n", result.Out, StringComparison.Ordinal);
        Assert.Contains("\nIf box fails\n", result.Out, StringComparison.Ordinal);
        Assert.Matches("\n2 +box .+ all in 2 steps, 1 move\n", result.Out);
        Assert.Matches("\ndesk +desk output 1 takes desk aux 1 ", result.Out);
        Assert.Matches("\nOther feeds: Monitor\\. +Its source is lost\\.", result.Out);
    }

    [Theory]
    [InlineData]
    [InlineData("--pairs")]
    [InlineData("--no-recovery", "--only", "point", "--only", "device")]
    [InlineData("--moves", "0", "--sets", "3")]
    public void The_json_answer_meets_the_published_schema(params string[] more)
    {
        var result = Impact([.. more, "--format", "json"]);

        Assert.Empty(SchemaValidator.Validate(SchemaKind.Impact, result.OutBytes));
        Assert.Equal("mon", JsonDocument.Parse(result.OutBytes).RootElement.GetProperty("losses")[0].GetProperty("subjects")[0].GetProperty("id").GetString());
    }

    [Fact]
    public void Html_and_markdown_are_written_to_files()
    {
        foreach (var (format, start) in new[] { ("html", "<!DOCTYPE html>"), ("markdown", "# Small\n") })
        {
            var path = folder.At($"cards.{format}");
            var result = Impact("--format", format, "--out", path);

            Assert.Equal((0, "", ""), (result.Code, result.Out, result.Error));
            Assert.StartsWith(start, File.ReadAllText(path), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_does_not_arrive_ends_with_1()
    {
        var result = Tool.Run(
                ["impact", "-"],
                Encoding.UTF8.GetBytes(
                    Shows
                        .Small.Replace("{ \"from\": \"desk/aux/1\", \"to\": \"desk/transmit/1\" }, ", "", StringComparison.Ordinal)
                        .Replace("desk/transmit/2-8", "desk/transmit/1-8", StringComparison.Ordinal)
                )
            )
            .Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains("Not arriving as the show stands", result.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--only takes device, link, cable, way, power, point, not 'mixer'", "--only", "mixer")]
    [InlineData("--moves takes a whole number from 0 to 65535, not 'few'", "--moves", "few")]
    [InlineData("--sets takes a whole number from 0 to 3, not '4'", "--sets", "4")]
    [InlineData("there are text, json, markdown, html", "--format", "pdf")]
    [InlineData("--pear", "--pear")]
    public void A_wrong_option_is_wrong_usage_with_a_remedy(string expected, params string[] arguments)
    {
        var result = Impact(arguments);

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_document_that_cannot_be_read_is_reported_and_no_file_is_written()
    {
        var path = folder.At("cards.html");
        var result = Tool.Run(["impact", "-", "--format", "html", "--out", path], "{"u8.ToArray()).Civil();
        var missing = Tool.Run("impact", folder.At("none.show.json")).Civil();

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.NotEqual("", result.Error);
        Assert.False(File.Exists(path));
        Assert.Equal((2, ""), (missing.Code, missing.Out));
        Assert.Contains("none.show.json", missing.Error, StringComparison.Ordinal);
    }
}
