using RoutingRules.Reading;

namespace RoutingRules.Schema.Tests;

public sealed class ExampleTests
{
    public static TheoryData<string> Shows => [.. Directory.GetFiles(Path.Combine(Repository.Schemas, "examples"), "*.show.json").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Shows))]
    public void An_example_show_satisfies_reader_and_validators(string name)
    {
        var text = File.ReadAllText(Path.Combine(Repository.Schemas, "examples", name));

        Assert.Equal((true, true, true), (Oracles.Reader(SchemaKind.Show, text), Oracles.First(SchemaKind.Show, text), Oracles.Second(SchemaKind.Show, text)));
    }
}
