using RoutingRules.Documents.Formats;

namespace RoutingRules.Schema.Tests;

public sealed class ExampleTests
{
    public static TheoryData<string> Shows =>
        [
            .. Directory
                .GetFiles(Path.Combine(Repository.At("schema"), "examples"), "*.show.json")
                .Select(path => Path.GetFileName(path))
                .Order(StringComparer.Ordinal),
        ];

    public static TheoryData<string> Runs =>
        [
            .. Directory
                .GetFiles(Path.Combine(Repository.At("schema"), "examples"), "*.run.json")
                .Select(path => Path.GetFileName(path))
                .Order(StringComparer.Ordinal),
        ];

    [Theory]
    [MemberData(nameof(Runs))]
    public void An_example_running_order_satisfies_reader_and_validators(string name)
    {
        var text = File.ReadAllText(Path.Combine(Repository.At("schema"), "examples", name));

        Assert.Equal((true, true, true), (Oracles.Reader(SchemaKind.Run, text), Oracles.First(SchemaKind.Run, text), Oracles.Second(SchemaKind.Run, text)));
        var late = text.Replace("\"start\": \"17:00\"", "\"start\": \"25:00\"", StringComparison.Ordinal);
        Assert.NotEqual(text, late);
        Assert.Equal((false, false, false), (Oracles.Reader(SchemaKind.Run, late), Oracles.First(SchemaKind.Run, late), Oracles.Second(SchemaKind.Run, late)));
    }

    [Theory]
    [MemberData(nameof(Shows))]
    public void An_example_show_satisfies_reader_and_validators(string name)
    {
        var text = File.ReadAllText(Path.Combine(Repository.At("schema"), "examples", name));

        Assert.Equal((true, true, true), (Oracles.Reader(SchemaKind.Show, text), Oracles.First(SchemaKind.Show, text), Oracles.Second(SchemaKind.Show, text)));
    }
}
