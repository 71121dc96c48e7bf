namespace RoutingRules.Documents.Archives;

/// <summary>The check sum of zip entries: CRC-32 as in ISO 3309 and RFC 1952, section 8.</summary>
internal static class Crc32
{
    private static readonly uint[] Table = CreateTable();

    public static uint Of(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var value in bytes)
        {
            sum = Table[(byte)(sum ^ value)] ^ (sum >> 8);
        }

        return ~sum;
    }

    private static uint[] CreateTable()
    {
        var table = new uint[256];
        for (var i = 0u; i < table.Length; i++)
        {
            var sum = i;
            for (var bit = 0; bit < 8; bit++)
            {
                sum = (sum & 1) == 0 ? sum >> 1 : (sum >> 1) ^ 0xEDB88320;
            }

            table[i] = sum;
        }

        return table;
    }
}
