using System.Text.Json;
using RoutingRules.Documents;

namespace RoutingRules.Benchmarks;

/// <summary>Reading against parsing alone.</summary>
public static class ReadRatios
{
    /// <summary>Prints the ratios.</summary>
    public static void Run()
    {
        foreach (var length in new[] { 20_480, 200_000 })
        {
            var ways = new ReadBenchmarks { Length = length };
            ways.Setup();
            var show = SampleShows.Grow(length);
            void Parse() => ways.Parse();

            Ratios.Header($"{show.Length} bytes, against JsonDocument.Parse");
            Ratios.Print("Utf8JsonReader, tokens only", () => Scan(show), Parse);
            Ratios.Print("ShowReader.Read", () => ways.Read(), Parse);
            Ratios.Print("source-generated deserialise of plain classes", () => ways.Deserialise(), Parse);
            Ratios.Print("NJsonSchema, schema only", () => ways.FirstValidator(), Parse);
            Ratios.Print("JsonSchema.Net, schema only", () => ways.SecondValidator(), Parse);
            var model = ShowReader.Read(show).Value!;
            Ratios.Print("ShowWriter.ToUtf8", () => ShowWriter.ToUtf8(model), Parse);
        }
    }

    private static void Scan(byte[] show)
    {
        var reader = new Utf8JsonReader(show);
        while (reader.Read()) { }
    }
}
