using System.Numerics;
using CanopySim.Geometry;

namespace CanopySim.Files.Recording;

/// <summary>
/// A canopy in bytes: places in 65,535 steps of the box that holds them all (a fifth of a millimeter in ten meters), directions in 32,767ths.
/// </summary>
internal static class CanopyBytes
{
    public static void Write(BinaryWriter writer, DrawnCanopy canopy)
    {
        var box = Box.Of(canopy);
        box.Write(writer);
        writer.Write(canopy.Blades.Count);
        writer.Write(canopy.Stalks.Count);
        writer.Write(canopy.Clusters.Count);
        foreach (var blade in canopy.Blades)
        {
            writer.Write(blade.LeafId);
            writer.Write((short)blade.Vine);
            writer.Write(blade.Shoot);
            writer.Write((byte)blade.Order);
            writer.Write((short)blade.Rank);
            writer.Write(blade.Area);
            box.WritePlace(writer, blade.Frame.Base);
            WriteDirection(writer, blade.Frame.Tip);
            WriteDirection(writer, blade.Frame.Normal);
        }

        foreach (var stalk in canopy.Stalks)
        {
            box.WritePlace(writer, stalk.From);
            box.WritePlace(writer, stalk.To);
            writer.Write((Half)stalk.FromRadius);
            writer.Write((Half)stalk.ToRadius);
        }

        foreach (var cluster in canopy.Clusters)
        {
            box.WritePlace(writer, cluster.Top);
            writer.Write(cluster.Length);
            writer.Write(cluster.Radius);
        }
    }

    public static DrawnCanopy Read(BinaryReader reader)
    {
        var box = Box.Read(reader);
        var (bladeCount, stalkCount, clusterCount) = (ByteCounts.Read(reader), ByteCounts.Read(reader), ByteCounts.Read(reader));
        var blades = new DrawnBlade[bladeCount];
        for (var i = 0; i < bladeCount; i++)
        {
            var (leaf, vine, shoot, order, rank) =
                (reader.ReadInt32(), reader.ReadInt16(), reader.ReadInt32(), reader.ReadByte(), reader.ReadInt16());
            var (area, at) = (reader.ReadSingle(), box.ReadPlace(reader));
            var (tip, normal) = (ReadDirection(reader), ReadDirection(reader));
            blades[i] = new DrawnBlade(leaf, vine, shoot, order, rank, area, new BladeFrame(at, Vector3.Cross(tip, normal), tip, normal));
        }

        var stalks = new DrawnStalk[stalkCount];
        for (var i = 0; i < stalkCount; i++)
            stalks[i] = new DrawnStalk(box.ReadPlace(reader), box.ReadPlace(reader), (float)reader.ReadHalf(), (float)reader.ReadHalf());
        var clusters = new DrawnCluster[clusterCount];
        for (var i = 0; i < clusterCount; i++)
            clusters[i] = new DrawnCluster(box.ReadPlace(reader), reader.ReadSingle(), reader.ReadSingle());
        return new DrawnCanopy(blades, stalks, clusters);
    }

    private static void WriteDirection(BinaryWriter writer, Vector3 direction)
    {
        writer.Write((short)MathF.Round(direction.X * short.MaxValue));
        writer.Write((short)MathF.Round(direction.Y * short.MaxValue));
        writer.Write((short)MathF.Round(direction.Z * short.MaxValue));
    }

    private static Vector3 ReadDirection(BinaryReader reader)
    {
        var direction = new Vector3(reader.ReadInt16(), reader.ReadInt16(), reader.ReadInt16());
        return direction == Vector3.Zero ? Vector3.UnitZ : Vector3.Normalize(direction);
    }

    private readonly record struct Box(Vector3 Low, Vector3 Size)
    {
        public static Box Of(DrawnCanopy canopy)
        {
            var (low, high) = (new Vector3(float.MaxValue), new Vector3(float.MinValue));
            foreach (var blade in canopy.Blades) Hold(blade.Frame.Base);
            foreach (var stalk in canopy.Stalks)
            {
                Hold(stalk.From);
                Hold(stalk.To);
            }

            foreach (var cluster in canopy.Clusters) Hold(cluster.Top);
            return high.X < low.X ? new Box(default, Vector3.One) : new Box(low, Vector3.Max(high - low, new Vector3(1e-3f)));

            void Hold(Vector3 point) => (low, high) = (Vector3.Min(low, point), Vector3.Max(high, point));
        }

        public static Box Read(BinaryReader reader) => new(ReadVector(reader), ReadVector(reader));

        public void Write(BinaryWriter writer)
        {
            foreach (var number in (float[])[Low.X, Low.Y, Low.Z, Size.X, Size.Y, Size.Z]) writer.Write(number);
        }

        public void WritePlace(BinaryWriter writer, Vector3 point)
        {
            var share = (point - Low) / Size * ushort.MaxValue;
            writer.Write((ushort)Math.Clamp(MathF.Round(share.X), 0, ushort.MaxValue));
            writer.Write((ushort)Math.Clamp(MathF.Round(share.Y), 0, ushort.MaxValue));
            writer.Write((ushort)Math.Clamp(MathF.Round(share.Z), 0, ushort.MaxValue));
        }

        public Vector3 ReadPlace(BinaryReader reader) =>
            Low + (new Vector3(reader.ReadUInt16(), reader.ReadUInt16(), reader.ReadUInt16()) / ushort.MaxValue * Size);

        private static Vector3 ReadVector(BinaryReader reader) => new(reader.ReadSingle(), reader.ReadSingle(), reader.ReadSingle());
    }
}

/// <summary>Counts that a block itself bears out.</summary>
internal static class ByteCounts
{
    /// <exception cref="InvalidDataException">More than the block has bytes.</exception>
    public static int Read(BinaryReader reader)
    {
        var count = reader.ReadInt32();
        return count >= 0 && count <= reader.BaseStream.Length ? count : throw new InvalidDataException("a count is out of range");
    }
}
