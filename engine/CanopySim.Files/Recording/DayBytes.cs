using System.Numerics;
using System.Runtime.InteropServices;
using CanopySim.Recording;

namespace CanopySim.Files.Recording;

/// <summary>Leaves and hours of a day in bytes. What is of an hour and a leaf is kept in half precision, 0.05 %.</summary>
internal static class DayBytes
{
    public static void Write(BinaryWriter writer, RecordedLeaves leaves)
    {
        writer.Write(leaves.Count);
        writer.Write(MemoryMarshal.AsBytes<short>(leaves.AgeDays));
        writer.Write(MemoryMarshal.AsBytes<float>(leaves.Area));
        writer.Write(MemoryMarshal.AsBytes<float>(leaves.Efficiency));
        writer.Write(MemoryMarshal.AsBytes<float>(leaves.AbsorbedParMoles));
        writer.Write(MemoryMarshal.AsBytes<float>(leaves.NetAssimilationGrams));
    }

    public static RecordedLeaves ReadLeaves(BinaryReader reader)
    {
        var count = ByteCounts.Read(reader);
        return new RecordedLeaves
        {
            AgeDays = ReadArray<short>(reader, count),
            Area = ReadArray<float>(reader, count),
            Efficiency = ReadArray<float>(reader, count),
            AbsorbedParMoles = ReadArray<float>(reader, count),
            NetAssimilationGrams = ReadArray<float>(reader, count),
        };
    }

    public static void Write(BinaryWriter writer, RecordedHours hours)
    {
        writer.Write(hours.Count);
        writer.Write(hours.LeafCount);
        writer.Write(hours.Hours);
        writer.Write(MemoryMarshal.AsBytes<Vector3>(hours.SunDirections));
        writer.Write(MemoryMarshal.AsBytes<float>(hours.IncidentPpfd));
        writer.Write(MemoryMarshal.AsBytes<float>(hours.AirTemperature));
        WriteHalves(writer, hours.AbsorbedPpfd);
        WriteHalves(writer, hours.NetAssimilation);
        WriteHalves(writer, hours.Temperature);
    }

    public static RecordedHours ReadHours(BinaryReader reader)
    {
        var (count, leaves) = (ByteCounts.Read(reader), ByteCounts.Read(reader));
        if ((long)count * leaves > reader.BaseStream.Length) throw new InvalidDataException("a count is out of range");
        return new RecordedHours
        {
            LeafCount = leaves,
            Hours = ReadArray<byte>(reader, count),
            SunDirections = ReadArray<Vector3>(reader, count),
            IncidentPpfd = ReadArray<float>(reader, count),
            AirTemperature = ReadArray<float>(reader, count),
            AbsorbedPpfd = ReadHalves(reader, count * leaves),
            NetAssimilation = ReadHalves(reader, count * leaves),
            Temperature = ReadHalves(reader, count * leaves),
        };
    }

    private static T[] ReadArray<T>(BinaryReader reader, int count)
        where T : unmanaged
    {
        var array = new T[count];
        reader.BaseStream.ReadExactly(MemoryMarshal.AsBytes(array.AsSpan()));
        return array;
    }

    private static void WriteHalves(BinaryWriter writer, float[] numbers) =>
        writer.Write(MemoryMarshal.AsBytes<Half>(Array.ConvertAll(numbers, number => (Half)number)));

    private static float[] ReadHalves(BinaryReader reader, int count) =>
        Array.ConvertAll(ReadArray<Half>(reader, count), half => (float)half);
}
