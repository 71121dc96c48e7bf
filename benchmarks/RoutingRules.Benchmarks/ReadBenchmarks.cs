using System.Text.Json;
using BenchmarkDotNet.Attributes;
using Json.Schema;
using RoutingRules.Documents;
using RoutingRules.Documents.Formats;
using RoutingRules.Schema;

namespace RoutingRules.Benchmarks;

/// <summary>Ways of getting from bytes to something checked.</summary>
[MemoryDiagnoser]
public class ReadBenchmarks
{
    private static readonly JsonSchema SecondSchema = JsonSchema.FromText(RoutingSchemas.Show);
    private byte[] show = [];

    /// <summary>Length of the document in bytes, about.</summary>
    [Params(20_480, 200_000)]
    public int Length { get; set; }

    [GlobalSetup]
    public void Setup() => show = SampleShows.Grow(Length);

    [Benchmark(Baseline = true, Description = "JsonDocument.Parse")]
    public int Parse()
    {
        using var document = JsonDocument.Parse(show);
        return document.RootElement.GetPropertyCount();
    }

    [Benchmark(Description = "ShowReader.Read (parse, check, model)")]
    public bool Read() => ShowReader.Read(show).IsUsable;

    [Benchmark(Description = "source-generated deserialise (parse, unchecked texts)")]
    public ShowDto? Deserialise() => JsonSerializer.Deserialize(show, ShowDtoContext.Default.ShowDto);

    [Benchmark(Description = "NJsonSchema, schema only")]
    public int FirstValidator() => SchemaValidator.Validate(SchemaKind.Show, show).Count;

    [Benchmark(Description = "JsonSchema.Net, schema only")]
    public bool SecondValidator()
    {
        using var document = JsonDocument.Parse(show);
        return SecondSchema.Evaluate(document.RootElement).IsValid;
    }

    [Benchmark(Description = "ShowWriter.ToUtf8")]
    public int Write() => ShowWriter.ToUtf8(ShowReader.Read(show).Value!).Length;
}
