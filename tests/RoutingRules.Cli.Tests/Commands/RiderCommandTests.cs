using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class RiderCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    private static string Club => File.ReadAllText(Repository.At("schema", "examples", "02-club-night.show.json"));

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_list_is_taken_questions_are_told_and_the_rest_of_the_text_stays()
    {
        var path = folder.Write("a.show.json", Club);
        var list = folder.Write("band.csv", "Ch;Instrument;Mic/DI;48V\n1;Djembe;dynamic;\n2;Theremin;;\n");

        var result = Tool.Run("rider", path, list, "--no-config", "--from-channel", "13", "--out", folder.At("b.show.json")).Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains("1 line and 0 mixes added; 1 question for the band\n  New lines: djembe\n", result.Out, StringComparison.Ordinal);
        Assert.Contains("line 3: What is 'Theremin'? Write the microphone, DI or line", result.Out, StringComparison.Ordinal);
        Assert.Contains(
            "{ \"id\": \"stage\", \"name\": \"Stage\", \"side\": \"centre\", \"walk\": 1 },",
            File.ReadAllText(folder.At("b.show.json")),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("line 2: 'Djembe' would take channel 1 of desk, which 'Kick' has.", "--from-channel", "1")]
    [InlineData("The show has no device bix. Name with --box one that it has.", "--box", "bix")]
    public void What_cannot_be_is_told_and_nothing_is_written(string problem, params string[] options)
    {
        var path = folder.Write("a.show.json", Club);
        var list = folder.Write("band.csv", "Ch,Instrument,Mic\n1,Djembe,dynamic\n");

        var result = Tool.Run(["rider", path, list, "--no-config", "--in-place", .. options]).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains(problem, result.Error, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(Club, File.ReadAllText(path));
    }
}
