using System.Text.Json;
using RoutingRules.Reading;

namespace RoutingRules.Benchmarks;

/// <summary>Reading against parsing alone.</summary>
public static class ReadRatios
{
    /// <summary>Prints the ratios.</summary>
    public static void Run()
    {
        foreach (var show in new[] { SampleShows.TwentyKilobytes(), SampleShows.Grow(200_000) })
        {
            void Parse()
            {
                using var document = JsonDocument.Parse(show);
            }

            Console.WriteLine($"{show.Length} bytes, against JsonDocument.Parse");
            Ratios.Print("Utf8JsonReader, tokens only", () => Scan(show), Parse);
            Ratios.Print("ShowReader.Read", () => ShowReader.Read(show), Parse);
        }
    }

    private static void Scan(byte[] show)
    {
        var reader = new Utf8JsonReader(show);
        while (reader.Read())
        {
        }
    }
}
